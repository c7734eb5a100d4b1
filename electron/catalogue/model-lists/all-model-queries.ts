import type { ListedModel, ModelPage } from '../../../shared-schemas/model-list.ts'
import type { Bindable, ReadableDatabase } from '../../database/handles.ts'
import { normaliseNumber } from '../normalise-number.ts'
import { keysOfWords } from './narrow-models.ts'

/** A brand, how many of its models the words leave, and what still has to hold of each of them. */
export interface BrandCount {
  readonly brand: string
  readonly models: number
  readonly brandId: number
  readonly needed: Needed
}

/** Each as a piece of SQL with what it binds. */
interface Needed {
  readonly sql: string
  readonly bound: readonly Bindable[]
}

/**
 * How many models the words leave of each brand, brands of which none are left out. A million models are not held in
 * memory for that: they are counted brand by brand in their index, and others are answered in between. `types` are all
 * that any model has.
 */
export function* countModelsByBrand(
  database: ReadableDatabase,
  words: string,
  types: readonly string[],
): Generator<number, BrandCount[]> {
  const keys = keysOfWords(words)
  const found: BrandCount[] = []
  for (const [brandId, brand] of [
    ...database.tuples<[number, string]>('SELECT brand_id, name FROM brand'),
  ].sort(byName)) {
    yield found.length
    const brandKey = normaliseNumber(brand)
    const needed = joinNeeded(keys.filter(key => !brandKey.includes(key)).map(key => neededFor(key, types)))
    const sql = `SELECT count(*) FROM model WHERE brand_id = ?${needed.sql}`
    const [[models] = [0]] = database.tuples<[number]>(sql, brandId, ...needed.bound)
    if (models > 0) found.push({ brand, models, brandId, needed })
  }
  return found
}

function byName([, one]: readonly [number, string], [, other]: readonly [number, string]): number {
  return one < other ? -1 : 1
}

/** The stretch of those models, by brand and key. */
export function readModelsOfBrands(
  database: ReadableDatabase,
  counts: readonly BrandCount[],
  { from, most }: { readonly from: number; readonly most: number },
): ListedModel[] {
  const found: ListedModel[] = []
  let before = 0
  for (const { brand, models, brandId, needed } of counts) {
    const offset = Math.max(0, from - before)
    const limit = most - found.length
    if (offset < models && limit > 0) {
      const sql = `SELECT model_number, appliance_type FROM model WHERE brand_id = ?${needed.sql}
        ORDER BY model_key LIMIT ? OFFSET ?`
      for (const [modelNumber, applianceType] of database.tuples<[string, string]>(
        sql,
        ...[brandId, ...needed.bound, limit, offset],
      ))
        found.push({ brand, modelNumber, applianceType, conditions: [] })
    }
    before += models
  }
  return found
}

/** A word stands in the number's key, or in the type's. */
function neededFor(key: string, types: readonly string[]): Needed {
  const ofTypes = types.filter(type => normaliseNumber(type).includes(key))
  const inType = ofTypes.length === 0 ? '' : ` OR appliance_type IN (${ofTypes.map(() => '?').join(', ')})`
  return { sql: ` AND (instr(model_key, ?) > 0${inType})`, bound: [key, ...ofTypes] }
}

function joinNeeded(all: readonly Needed[]): Needed {
  return { sql: all.map(({ sql }) => sql).join(''), bound: all.flatMap(({ bound }) => bound) }
}

/** The page with its counts, from the counts of all brands and of those that the words leave. */
export function pageOf(
  all: readonly BrandCount[],
  left: readonly BrandCount[],
  models: readonly ListedModel[],
): ModelPage {
  return {
    count: sumOf(all),
    matching: sumOf(left),
    brands: left.map(({ brand, models: count }) => ({ brand, models: count })),
    models: [...models],
  }
}

function sumOf(counts: readonly BrandCount[]): number {
  return counts.reduce((sum, { models }) => sum + models, 0)
}

/** Every word that a model’s type is told by. Reads all models: to be kept until the catalogue changes. */
export function listApplianceTypes(database: ReadableDatabase): string[] {
  return [...database.tuples<[string]>('SELECT DISTINCT appliance_type FROM model')].map(([type]) => type)
}
