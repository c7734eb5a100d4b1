import type { Catalogue, Row } from './catalogue-rows.ts'
import { numberKey } from './catalogue-rows.ts'
import { type ExpandedFitment, expandFitments } from './expand-fitments.ts'
import { familyKinds } from './family-kinds/all-kinds.ts'
import { gtinCheckDigit } from './make-gtin.ts'

export type SampleReport = {
  readonly counts: Readonly<Record<string, number>>
  /** One sentence each; empty when the sample holds together. */
  readonly faults: readonly string[]
}

/** Counts the sample and looks for everything a loader would have to refuse. */
export function checkSample(catalogue: Catalogue): SampleReport {
  const fitments = expandFitments(catalogue)
  return {
    counts: countSample(catalogue, fitments),
    faults: [
      ...checkUnique(catalogue),
      ...checkReferences(catalogue),
      ...checkRanges(catalogue),
      ...checkFitments(catalogue, fitments),
      ...checkAttributes(catalogue, fitments),
      ...checkSupersessions(catalogue),
      ...checkKits(catalogue),
      ...checkBranches(catalogue),
      ...checkGtins(catalogue),
      ...checkDateCodes(catalogue),
    ].slice(0, 50),
  }
}

function countSample(catalogue: Catalogue, fitments: readonly ExpandedFitment[]): Record<string, number> {
  const modelsByFamily = new Map<string, Set<string>>()
  for (const { row, model } of fitments) {
    if (row.says !== 'includes' || row.family === '') continue
    const models = modelsByFamily.get(row.family) ?? new Set()
    modelsByFamily.set(row.family, models.add(model))
  }
  const widths = [...modelsByFamily.values()].map(models => models.size).sort((one, other) => other - one)
  const listedByName = new Set(
    catalogue['fitments.csv'].filter(row => row.model_number === '*').map(row => row.family),
  )
  const explicit = [...modelsByFamily]
    .filter(([family]) => !listedByName.has(family))
    .map(([, models]) => models.size)
  return {
    brands: catalogue['brands.csv'].length,
    'appliance types': new Set(catalogue['models.csv'].map(row => row.appliance_type)).size,
    models: catalogue['models.csv'].length,
    'sales names': new Set(catalogue['sales_names.csv'].map(row => `${row.brand} ${row.sales_name}`)).size,
    families: catalogue['families.csv'].length,
    'function groups': new Set(catalogue['families.csv'].map(row => row.function)).size,
    'kinds of part': familyKinds.length,
    parts: catalogue['parts.csv'].length,
    'parts with a GTIN': catalogue['parts.csv'].filter(row => row.gtin !== '').length,
    'cross references': catalogue['cross_references.csv'].length,
    'model attributes': catalogue['model_attributes.csv'].length,
    fitments: catalogue['fitments.csv'].length,
    'fitments by wildcard': catalogue['fitments.csv'].filter(row => /[*?]/.test(row.model_number)).length,
    'fitments by part number': catalogue['fitments.csv'].filter(row => row.part_number !== '').length,
    'fitments with a made date': catalogue['fitments.csv'].filter(row => row.made_from + row.made_to !== '')
      .length,
    'fitments with a serial': catalogue['fitments.csv'].filter(row => row.serial_from + row.serial_to !== '')
      .length,
    exclusions: catalogue['fitments.csv'].filter(row => row.says === 'excludes').length,
    'models of the widest family': widths[0] ?? 0,
    'models of the widest family listed one by one': Math.max(...explicit),
    supersessions: catalogue['supersessions.csv'].length,
    'supersessions by made date': catalogue['supersessions.csv'].filter(
      row => row.made_from + row.made_to !== '',
    ).length,
    'supersessions that need more': catalogue['supersessions.csv'].filter(row => row.also_needs !== '')
      .length,
    'parts in kits': catalogue['kits.csv'].length,
    'parts replaced together': catalogue['replaced_together.csv'].length,
    suppliers: catalogue['suppliers.csv'].length,
    offers: catalogue['offers.csv'].length,
    'stock lines': catalogue['opening_stock.csv'].length,
    'van list lines': catalogue['van_lists.csv'].length,
    'lines of use': catalogue['usage.csv'].length,
    'symptoms of the guide': new Set(
      catalogue['faults.csv'].map(row => `${row.appliance_type} ${row.symptom}`),
    ).size,
    'causes of the guide': catalogue['faults.csv'].length,
    'checks of the guide': catalogue['fault_checks.csv'].length,
    jobs: catalogue['jobs.csv'].length,
  }
}

function checkUnique(catalogue: Catalogue): string[] {
  return [
    ...findRepeats('model', catalogue['models.csv'], row => `${row.brand} ${numberKey(row.model_number)}`),
    ...findRepeats('part', catalogue['parts.csv'], row => numberKey(row.part_number)),
    ...findRepeats('family', catalogue['families.csv'], row => row.family),
    ...findRepeats('attribute', catalogue['attributes.csv'], row => `${row.family} ${row.attribute}`),
    ...findRepeats(
      'gtin',
      catalogue['parts.csv'].filter(row => row.gtin !== ''),
      row => row.gtin,
    ),
    ...findRepeats(
      'number',
      [
        ...catalogue['parts.csv'].map(row => row.part_number),
        ...catalogue['cross_references.csv'].map(row => row.number),
      ],
      numberKey,
    ),
    ...findRepeats('kit row', catalogue['kits.csv'], row => `${row.kit} ${row.part_number}`),
    ...findRepeats('pair', catalogue['replaced_together.csv'], row => `${row.part_number} ${row.with_part}`),
    ...findRepeats(
      'fault',
      catalogue['faults.csv'],
      row => `${row.appliance_type} ${row.symptom} ${row.cause}`,
    ),
    ...findRepeats('check', catalogue['fault_checks.csv'], row => `${row.appliance_type} ${row.check}`),
    ...findRepeats('fitting note', catalogue['fitting_notes.csv'], row => `${row.stage} ${row.note}`),
    ...findRepeats('sales name', catalogue['sales_names.csv'], row => Object.values(row).join(' ')),
    ...findRepeats(
      'model attribute',
      catalogue['model_attributes.csv'],
      row => `${row.brand} ${row.model_number} ${row.family} ${row.attribute}`,
    ),
    ...findRepeats(
      'supersession',
      catalogue['supersessions.csv'],
      row => `${row.old_part} ${row.new_part} ${row.made_from}`,
    ),
    ...findRepeats(
      'offer',
      catalogue['offers.csv'],
      row => `${row.supplier} ${row.part_number} ${row.from_quantity}`,
    ),
    ...findRepeats('supplier code', firstOffers(catalogue), row => `${row.supplier} ${row.supplier_code}`),
    ...findRepeats('stock', catalogue['opening_stock.csv'], row => `${row.location} ${row.part_number}`),
    ...findRepeats(
      'van list',
      catalogue['van_lists.csv'],
      row => `${row.van} ${row.family} ${row.part_number}`,
    ),
    ...findRepeats(
      'line of use',
      catalogue['usage.csv'],
      row => `${row.part_number} ${row.date} ${row.location} ${row.job}`,
    ),
    ...findRepeats('job', catalogue['jobs.csv'], row => row.job),
  ]
}

function firstOffers(catalogue: Catalogue): Row<'offers.csv'>[] {
  return catalogue['offers.csv'].filter(row => row.from_quantity === row.minimum)
}

function findRepeats<Item>(what: string, items: readonly Item[], readKey: (item: Item) => string): string[] {
  const seen = new Set<string>()
  return items.map(readKey).flatMap(key => {
    if (seen.has(key)) return [`${what} twice: ${key}`]
    seen.add(key)
    return []
  })
}

function checkReferences(catalogue: Catalogue): string[] {
  const brands = new Set(catalogue['brands.csv'].map(row => row.brand))
  const models = new Set(catalogue['models.csv'].map(row => `${row.brand} ${row.model_number}`))
  const families = new Set(catalogue['families.csv'].map(row => row.family))
  const parts = new Set(catalogue['parts.csv'].map(row => row.part_number))
  const suppliers = new Set(catalogue['suppliers.csv'].map(row => row.supplier))
  const locations = new Set(catalogue['locations.csv'].map(row => row.location))
  const jobs = new Set(catalogue['jobs.csv'].map(row => row.job))
  const missing = (file: string, known: ReadonlySet<string>, values: readonly string[]) =>
    values
      .filter(value => value !== '' && !known.has(value))
      .map(value => `${file} speaks of ${value}, which is not there`)
  const modelNames = (rows: readonly { readonly brand: string; readonly model_number: string }[]) =>
    rows.map(row => `${row.brand} ${row.model_number}`)
  const fitments = catalogue['fitments.csv']
  return [
    ...missing(
      'models.csv',
      brands,
      catalogue['models.csv'].map(row => row.brand),
    ),
    ...missing(
      'date_codes.csv',
      brands,
      catalogue['date_codes.csv'].map(row => row.brand),
    ),
    ...missing('sales_names.csv', models, modelNames(catalogue['sales_names.csv'])),
    ...missing('model_attributes.csv', models, modelNames(catalogue['model_attributes.csv'])),
    ...missing('jobs.csv', models, modelNames(catalogue['jobs.csv'])),
    ...missing(
      'jobs.csv',
      locations,
      catalogue['jobs.csv'].map(row => row.van),
    ),
    ...missing(
      'jobs.csv',
      families,
      catalogue['jobs.csv'].flatMap(row => row.families_needed.split('|')),
    ),
    ...missing(
      'parts.csv',
      families,
      catalogue['parts.csv'].map(row => row.family),
    ),
    ...missing(
      'attributes.csv',
      families,
      catalogue['attributes.csv'].map(row => row.family),
    ),
    ...missing(
      'fitments.csv',
      brands,
      fitments.map(row => row.brand),
    ),
    ...missing(
      'fitments.csv',
      families,
      fitments.map(row => row.family),
    ),
    ...missing(
      'fitments.csv',
      parts,
      fitments.map(row => row.part_number),
    ),
    ...missing(
      'cross_references.csv',
      parts,
      catalogue['cross_references.csv'].map(row => row.part_number),
    ),
    ...missing(
      'supersessions.csv',
      parts,
      catalogue['supersessions.csv'].flatMap(row => [
        row.old_part,
        row.new_part,
        ...row.also_needs.split('|'),
      ]),
    ),
    ...missing(
      'kits.csv',
      parts,
      catalogue['kits.csv'].flatMap(row => [row.kit, row.part_number]),
    ),
    ...missing(
      'replaced_together.csv',
      parts,
      catalogue['replaced_together.csv'].flatMap(row => [row.part_number, row.with_part]),
    ),
    ...missing(
      'offers.csv',
      parts,
      catalogue['offers.csv'].map(row => row.part_number),
    ),
    ...missing(
      'offers.csv',
      suppliers,
      catalogue['offers.csv'].map(row => row.supplier),
    ),
    ...missing(
      'opening_stock.csv',
      parts,
      catalogue['opening_stock.csv'].map(row => row.part_number),
    ),
    ...missing(
      'opening_stock.csv',
      locations,
      catalogue['opening_stock.csv'].map(row => row.location),
    ),
    ...missing(
      'usage.csv',
      parts,
      catalogue['usage.csv'].map(row => row.part_number),
    ),
    ...missing(
      'usage.csv',
      locations,
      catalogue['usage.csv'].map(row => row.location),
    ),
    ...missing(
      'usage.csv',
      jobs,
      catalogue['usage.csv'].map(row => row.job),
    ),
    ...missing(
      'van_lists.csv',
      parts,
      catalogue['van_lists.csv'].map(row => row.part_number),
    ),
    ...missing(
      'van_lists.csv',
      families,
      catalogue['van_lists.csv'].map(row => row.family),
    ),
  ]
}

function checkRanges(catalogue: Catalogue): string[] {
  const dated = [...catalogue['models.csv'], ...catalogue['fitments.csv'], ...catalogue['supersessions.csv']]
  const inverted = dated.filter(
    row => row.made_from !== '' && row.made_to !== '' && row.made_from > row.made_to,
  )
  const badMonths = dated.filter(row =>
    [row.made_from, row.made_to].some(month => month !== '' && !/^20\d\d-(0[1-9]|1[0-2])$/.test(month)),
  )
  const serials = catalogue['fitments.csv'].filter(
    row => row.serial_from.length !== row.serial_to.length || row.serial_from > row.serial_to,
  )
  return [...inverted, ...badMonths, ...serials].map(
    row => `range upside down or not a range: ${Object.values(row).join(',')}`,
  )
}

function checkFitments(catalogue: Catalogue, fitments: readonly ExpandedFitment[]): string[] {
  const said = new Map<string, Row<'fitments.csv'>>()
  const contradictions = fitments.flatMap(({ row, model }) => {
    const subject = `${row.family}|${row.part_number}|${model}|${row.made_from}|${row.made_to}|${row.serial_from}|${row.serial_to}|${row.position}|${row.source}`
    const before = said.get(subject)
    said.set(subject, row)
    return before === undefined ? [] : [`said twice by one source: ${subject}`]
  })
  const matching = new Set(fitments.map(({ row }) => row))
  const rows = catalogue['fitments.csv']
  return [
    ...contradictions,
    ...rows.filter(row => !matching.has(row)).map(row => `means no model: ${row.brand} ${row.model_number}`),
    ...rows
      .filter(row => (row.family === '') === (row.part_number === ''))
      .map(row => `not exactly one of family and part: ${Object.values(row).join(',')}`),
    ...findUnfitted(catalogue, fitments),
  ]
}

/** Every family goes into something, but for what is only ever bought along with a successor. */
function findUnfitted(catalogue: Catalogue, fitments: readonly ExpandedFitment[]): string[] {
  const familyOfPart = new Map(catalogue['parts.csv'].map(row => [row.part_number, row.family]))
  const fitted = new Set(fitments.map(({ row }) => row.family || familyOfPart.get(row.part_number)))
  const boughtAlong = new Set(
    catalogue['supersessions.csv']
      .flatMap(row => row.also_needs.split('|'))
      .map(number => familyOfPart.get(number)),
  )
  return catalogue['families.csv']
    .filter(row => !fitted.has(row.family) && !boughtAlong.has(row.family))
    .map(row => `family goes into nothing: ${row.family}`)
}

/** Parts state their family's attributes and no other; models state what they need of every family they take. */
function checkAttributes(catalogue: Catalogue, fitments: readonly ExpandedFitment[]): string[] {
  const attributes = Map.groupBy(catalogue['attributes.csv'], row => row.family)
  const partFaults = catalogue['parts.csv'].flatMap(row => {
    const stated = row.attributes
      .split(';')
      .filter(pair => pair !== '')
      .map(pair => pair.split('=')[0])
    const known = (attributes.get(row.family) ?? []).map(attribute => attribute.attribute)
    const agree =
      stated.length === known.length && stated.every(name => name !== undefined && known.includes(name))
    return agree
      ? []
      : [`part ${row.part_number} states ${stated.join(', ')} where its family has ${known.join(', ')}`]
  })
  const plateReadings = ['volts', 'hertz', 'watts']
  const stated = new Set(
    catalogue['model_attributes.csv'].map(
      row => `${row.brand}\t${row.model_number}\t${row.family}\t${row.attribute}`,
    ),
  )
  const familyOfPart = new Map(catalogue['parts.csv'].map(row => [row.part_number, row.family]))
  const modelFaults = fitments
    .filter(({ row }) => row.says === 'includes')
    .flatMap(({ row, model }) => {
      const family = row.family || (familyOfPart.get(row.part_number) ?? '')
      return (attributes.get(family) ?? [])
        .filter(
          ({ attribute }) =>
            !plateReadings.includes(attribute) && !stated.has(`${model}\t${family}\t${attribute}`),
        )
        .map(({ attribute }) => `${model} does not say what ${attribute} it needs of ${family}`)
    })
  return [...partFaults, ...modelFaults]
}

function checkSupersessions(catalogue: Catalogue): string[] {
  const nexts = Map.groupBy(catalogue['supersessions.csv'], row => row.old_part)
  return catalogue['supersessions.csv'].flatMap(start => {
    let reached = [start.new_part]
    for (let step = 0; step < 10; step += 1) {
      if (reached.includes(start.old_part)) return [`supersession loop at ${start.old_part}`]
      reached = reached.flatMap(number => (nexts.get(number) ?? []).map(row => row.new_part))
    }
    return reached.length > 0 ? [`supersession chain longer than ten from ${start.old_part}`] : []
  })
}

/** No kit comes in itself, however many kits lie between. */
function checkKits(catalogue: Catalogue): string[] {
  const inside = Map.groupBy(catalogue['kits.csv'], row => row.kit)
  return [...inside.keys()].flatMap(kit => {
    const reached = new Set((inside.get(kit) ?? []).map(row => row.part_number))
    for (const inner of reached) for (const row of inside.get(inner) ?? []) reached.add(row.part_number)
    return reached.has(kit) ? [`kit in itself: ${kit}`] : []
  })
}

function checkGtins(catalogue: Catalogue): string[] {
  return catalogue['parts.csv']
    .filter(row => row.gtin !== '')
    .filter(
      row => !/^2\d{12}$/.test(row.gtin) || gtinCheckDigit(row.gtin.slice(0, 12)) !== Number(row.gtin[12]),
    )
    .map(row => `GTIN with a wrong check digit or outside 20 to 29: ${row.gtin}`)
}

/** A dated `way` may branch, but what holds at one time leads to one number only. */
function checkBranches(catalogue: Catalogue): string[] {
  const oneWay = catalogue['supersessions.csv'].filter(row => row.way === 'one')
  return [...Map.groupBy(oneWay, row => row.old_part)].flatMap(([old, rows]) => {
    const sorted = rows.toSorted((one, other) => (one.made_from < other.made_from ? -1 : 1))
    const overlaps = sorted.some((row, index) => {
      const next = sorted[index + 1]
      return next !== undefined && (row.made_to === '' || row.made_to >= next.made_from)
    })
    return overlaps ? [`${old} has two successors at one time`] : []
  })
}

function checkDateCodes(catalogue: Catalogue): string[] {
  return catalogue['date_codes.csv'].flatMap(row => {
    const groups = [...new RegExp(row.pattern, 'u').source.matchAll(/\?<(\w+)>/g)].map(match => match[1])
    const explained = row.means.split(';').map(meaning => meaning.split('=')[0])
    return groups.every(group => explained.includes(group)) && groups.length === explained.length
      ? []
      : [`date code of ${row.brand} does not explain ${groups.join(' and ')}`]
  })
}
