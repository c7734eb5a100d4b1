import {
  type Catalogue,
  type CatalogueFile,
  type Column,
  catalogueColumns,
  type Row,
  type SparseRow,
} from './catalogue-rows.ts'
import { inventedBrands } from './invented-brands.ts'
import { makeCounterSales } from './make-counter-sales.ts'
import { dateCodes } from './make-date-codes.ts'
import { listAttributeRows, listFamilyRows, makeFamilies } from './make-families.ts'
import { listFaultChecks, listFaultOutcomes, listFaults, listFittingNotes } from './make-fault-guide.ts'
import { makeFitments } from './make-fitments.ts'
import { makeJobs } from './make-jobs.ts'
import { makeModels, type SampleModel } from './make-models.ts'
import { listReplacedTogether } from './make-pairs.ts'
import { makeParts, type SamplePart, writeStates } from './make-parts.ts'
import { locations, makeStock } from './make-stock.ts'
import { listSupersessions } from './make-supersessions.ts'
import { makeOffers, suppliers } from './make-suppliers.ts'
import { listPlanted } from './planted-rows.ts'
import { hashText } from './seeded-random.ts'

/** The whole sample shop as rows, the same on every run. */
export function buildCatalogue(): Catalogue {
  const models = makeModels()
  const families = makeFamilies()
  const parts = makeParts(families)
  const fitted = makeFitments(models, families, parts)
  const work = makeJobs(fitted, parts)
  const usage = sortUsage([...work.usage, ...makeCounterSales(parts, families)])
  const stock = makeStock(parts, families, usage)
  return {
    'brands.csv': fill(
      'brands.csv',
      inventedBrands.map(({ brand }) => ({ brand })),
    ),
    'models.csv': fill('models.csv', models.map(writeModel)),
    'sales_names.csv': fill('sales_names.csv', models.flatMap(writeSalesName)),
    'families.csv': fill('families.csv', listFamilyRows(families)),
    'attributes.csv': fill('attributes.csv', listAttributeRows(families)),
    'parts.csv': fill('parts.csv', parts.map(writePart)),
    'cross_references.csv': fill('cross_references.csv', listCrossReferences(parts)),
    'model_attributes.csv': fill('model_attributes.csv', fitted.modelAttributes),
    'fitments.csv': fill('fitments.csv', fitted.fitments),
    'supersessions.csv': fill('supersessions.csv', listSupersessions(parts)),
    'kits.csv': fill('kits.csv', listPlanted('kits.csv')),
    'replaced_together.csv': fill('replaced_together.csv', listReplacedTogether(parts)),
    'date_codes.csv': fill('date_codes.csv', dateCodes),
    'suppliers.csv': fill('suppliers.csv', suppliers),
    'offers.csv': fill('offers.csv', makeOffers(parts)),
    'locations.csv': fill('locations.csv', locations),
    'opening_stock.csv': fill('opening_stock.csv', stock.openingStock),
    'usage.csv': fill('usage.csv', usage),
    'van_lists.csv': fill('van_lists.csv', stock.vanLists),
    'jobs.csv': fill('jobs.csv', work.jobs),
    'faults.csv': fill('faults.csv', listFaults(families)),
    'fault_checks.csv': fill('fault_checks.csv', listFaultChecks()),
    'fault_outcomes.csv': fill('fault_outcomes.csv', listFaultOutcomes()),
    'fitting_notes.csv': fill('fitting_notes.csv', listFittingNotes(families)),
  }
}

/** Every column present: what was left out is not known, and stands as an empty cell. */
function fill<File extends CatalogueFile>(file: File, rows: readonly SparseRow<File>[]): Row<File>[] {
  const columns: readonly Column<File>[] = catalogueColumns[file]
  return rows.map(row => {
    const cells = new Map(columns.map(column => [column, row[column] ?? '']))
    // The loop above gave every column of this file its cell.
    return Object.fromEntries(cells) as Row<File>
  })
}

function writeModel(model: SampleModel): SparseRow<'models.csv'> {
  return {
    brand: model.brand,
    model_number: model.modelNumber,
    appliance_type: model.type,
    platform: model.platform,
    made_from: model.madeFrom,
    made_to: model.madeTo,
    volts: model.volts,
    hertz: model.hertz,
    watts: model.watts,
  }
}

function writeSalesName(model: SampleModel): SparseRow<'sales_names.csv'>[] {
  if (model.salesName === '') return []
  return [{ brand: model.brand, sales_name: model.salesName, model_number: model.modelNumber }]
}

function writePart(part: SamplePart): SparseRow<'parts.csv'> {
  return {
    part_number: part.partNumber,
    family: part.family,
    maker: part.maker,
    kind: part.kind,
    description: part.description,
    gtin: part.gtin,
    attributes: writeStates(part.states),
  }
}

/** The sub-maker's number, moulded into about a third of the genuine parts. */
function listCrossReferences(parts: readonly SamplePart[]): SparseRow<'cross_references.csv'>[] {
  const moulded = parts
    .filter(
      part => part.kind === 'genuine' && !part.isPlanted && hashText(`moulded ${part.partNumber}`) % 3 === 0,
    )
    .map((part, index) => ({
      number: `${'ABGSZ'.charAt(index % 5)}${String(5600 + index * 3)}.${1 + (index % 9)}`,
      part_number: part.partNumber,
    }))
  return [...listPlanted('cross_references.csv'), ...moulded]
}

function sortUsage(usage: readonly SparseRow<'usage.csv'>[]): SparseRow<'usage.csv'>[] {
  const order = (row: SparseRow<'usage.csv'>) => `${row.date} ${row.location} ${row.job} ${row.part_number}`
  return usage
    .map(row => ({ row, key: order(row) }))
    .sort((one, other) => (one.key < other.key ? -1 : one.key > other.key ? 1 : 0))
    .map(({ row }) => row)
}
