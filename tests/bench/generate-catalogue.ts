import { once } from 'node:events'
import { createWriteStream } from 'node:fs'
import { normaliseNumber } from '../../electron/catalogue/normalise-number.ts'
import type { DatabaseHandle } from '../../electron/database/handles.ts'
import { inTransaction } from '../../electron/database/handles.ts'
import type { ModelRow } from '../../electron/model-lookup/lay-out-models.ts'
import { seededChoice } from './generate-models.ts'

/** One statement of a generated list: what it is said of, and the models by their places among the brand's. */
interface Listed {
  readonly head: string
  readonly tail: string
  readonly models: readonly ModelRow[]
}

/**
 * A list of fitments, statement after statement: how many models one names falls with its rank as a power, from 6,000
 * down, and the ranks come in any order. Every fourth is said of a family, the others of a part. Its models stand near each other in the numbering of one brand, with gaps.
 */
export function* generateFitments(
  models: readonly ModelRow[],
  fitments: number,
  seed = 20261123,
): Generator<Listed> {
  const choose = seededChoice(seed)
  const ofBrand = [...Map.groupBy(models, ({ brand }) => brand).values()]
  const sizes = shuffle(listSizes(fitments), choose)
  let left = fitments
  for (let at = 0; left > 0; at += 1) {
    const size = Math.min(left, sizes[at % sizes.length] as number)
    // By a model, not by a brand, so that large brands are listed more.
    const near = models[choose(models.length)] as ModelRow
    const brand = ofBrand.find(([first]) => first?.brand === near.brand) ?? []
    const taken: ModelRow[] = []
    const step = 1 + choose(2)
    let place = choose(Math.max(1, brand.length - size * step))
    while (taken.length < size && place < brand.length) {
      taken.push(brand[place] as ModelRow)
      place += choose(3) === 0 ? step : 1
    }
    left -= taken.length
    const subject = at % 4 === 0 ? `fam-${at},` : `,P${at}`
    const dates = choose(10) === 0 ? '2012-03,2016-11' : ','
    yield {
      head: `includes,${subject},`,
      tail: `,${dates},,,,${1 + choose(2)},List ${choose(sources)}`,
      models: taken,
    }
  }
}

export const fitmentsHeader =
  'says,family,part_number,brand,model_number,made_from,made_to,serial_from,serial_to,position,quantity,source'

const sources = 8
const largest = 6000
const power = 0.35

/** The sizes by rank, until there are so many fitments. */
function listSizes(fitments: number): number[] {
  const sizes: number[] = []
  let left = fitments
  while (left > 0) {
    const size = Math.min(left, Math.ceil(largest * (sizes.length + 1) ** -power))
    sizes.push(size)
    left -= size
  }
  return sizes
}

function shuffle(items: number[], choose: (below: number) => number): number[] {
  for (let at = items.length - 1; at > 0; at -= 1) {
    const other = choose(at + 1)
    const kept = items[at] as number
    items[at] = items[other] as number
    items[other] = kept
  }
  return items
}

/** Writes the list as CSV and gives how many statements and rows it has. */
export async function writeFitments(
  file: string,
  models: readonly ModelRow[],
  fitments: number,
): Promise<{ readonly statements: number; readonly rows: number }> {
  const stream = createWriteStream(file)
  let [statements, rows, text] = [0, 0, `${fitmentsHeader}\n`]
  for (const { head, tail, models: named } of generateFitments(models, fitments)) {
    for (const { brand, modelNumber } of named) text += `${head}${brand},${modelNumber}${tail}\n`
    statements += 1
    rows += named.length
    if (text.length < pieceLength) continue
    if (!stream.write(text)) await once(stream, 'drain')
    text = ''
  }
  stream.end(text)
  await once(stream, 'close')
  return { statements, rows }
}

const pieceLength = 1024 * 1024

/** Puts what the list speaks of into a new database: brands, models, and so many families and parts. */
export function fillCatalogue(handle: DatabaseHandle, models: readonly ModelRow[], statements: number): void {
  inTransaction(handle, database => {
    const brandIds = new Map<string, number>()
    for (const { brand } of models)
      if (!brandIds.has(brand))
        brandIds.set(
          brand,
          database.run('INSERT INTO brand (name, name_key) VALUES (?, ?)', brand, normaliseNumber(brand))
            .lastId,
        )
    for (const { modelId, brand, modelNumber, key } of models)
      database.run(
        `INSERT INTO model (model_id, brand_id, model_number, model_key, appliance_type) VALUES (?, ?, ?, ?, 'washer')`,
        ...[modelId, brandIds.get(brand) ?? 0, modelNumber, key],
      )
    for (let at = 0; at < statements; at += 4)
      database.run(
        `INSERT INTO family (family_id, family, name, function, appliance_types, safety_device) VALUES (?, ?, ?, '', '', 0)`,
        ...[at / 4 + 1, `fam-${at}`, `Family ${at}`],
      )
    for (let at = 0; at < statements; at += 1)
      if (at % 4 > 0)
        database.run(
          `INSERT INTO part (part_number, part_key, family_id, maker, kind, description) VALUES (?1, ?1, ?2, '', 'genuine', '')`,
          ...[`P${at}`, Math.floor(at / 4) + 1],
        )
  })
}
