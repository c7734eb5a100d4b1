import { z } from 'zod'
import type { ReadableDatabase } from '../../database/handles.ts'
import { listNearestModelNumbers } from '../nearest-model-queries.ts'
import { normaliseNumber } from '../normalise-number.ts'
import { listNearestPartNumbers } from '../part-queries.ts'
import { ownText } from './own-text.ts'
import { RowFault } from './row-fault.ts'

/** Which column of a row names a thing, for the fault when there is none such. */
interface Naming {
  readonly column?: string
}

interface AddedModel {
  readonly brandId: number
  readonly key: string
  readonly modelId: number
}

const modelRow = z.object({ model_id: z.int() })

/**
 * Everything that a row may refer to, by its key, as it stands at this moment of the run. In memory, because every
 * row of the large files asks for two or three of them.
 */
export class KnownThings {
  readonly brands = new Map<string, number>()
  readonly families = new Map<string, number>()
  readonly parts = new Map<string, number>()
  readonly suppliers = new Map<string, number>()
  readonly locations = new Map<string, number>()
  readonly vans = new Set<number>()
  /** Per brand, all its models by their key, where a wildcard has asked for them. */
  readonly #models = new Map<number, Map<string, number>>()
  /** Per family, its attributes with their units. */
  readonly attributes = new Map<number, Map<string, string>>()
  readonly modelsAddedNow: AddedModel[] = []
  readonly #keys = new Map<string, string>()
  readonly #database: ReadableDatabase

  constructor(database: ReadableDatabase) {
    this.#database = database
    fill(this.brands, database.tuples('SELECT name_key, brand_id FROM brand'))
    fill(this.families, database.tuples('SELECT family, family_id FROM family'))
    fill(this.parts, database.tuples('SELECT part_key, part_id FROM part'))
    fill(this.suppliers, database.tuples('SELECT supplier, supplier_id FROM supplier'))
    fill(this.locations, database.tuples('SELECT location, location_id FROM location'))
    const vans = database.tuples<[number]>("SELECT location_id FROM location WHERE kind = 'van'")
    for (const [locationId] of vans) this.vans.add(locationId)
    const attributes = database.tuples<[number, string, string]>(
      'SELECT family_id, attribute, unit FROM family_attribute',
    )
    for (const [familyId, attribute, unit] of attributes) this.attributesOf(familyId).set(attribute, unit)
  }

  brand(name: string, { column = 'brand' }: Naming = {}): number {
    const hint = 'add it to brands.csv, or mend the spelling'
    return found(this.brands, this.keyOf(name), column, () => `no brand is called “${name}”: ${hint}`)
  }

  family(code: string, { column = 'family' }: Naming = {}): number {
    const hint = 'add it to families.csv, or mend the spelling'
    return found(this.families, code, column, () => `no family is called “${code}”: ${hint}`)
  }

  part(number: string, { column = 'part_number' }: Naming = {}): number {
    return found(this.parts, this.keyOf(number), column, () => {
      const nearest = wordNearest(listNearestPartNumbers(this.#database, number, mostNearest))
      return `no part has the number “${number}”: add it to parts.csv, or mend the number${nearest}`
    })
  }

  supplier(code: string): number {
    const hint = 'add it to suppliers.csv, or mend the spelling'
    return found(this.suppliers, code, 'supplier', () => `no supplier is called “${code}”: ${hint}`)
  }

  location(code: string, { column = 'location' }: Naming = {}): number {
    const hint = 'add it to locations.csv, or mend the spelling'
    return found(this.locations, code, column, () => `no location is called “${code}”: ${hint}`)
  }

  van(code: string): number {
    const locationId = this.location(code, { column: 'van' })
    if (this.vans.has(locationId)) return locationId
    throw new RowFault('van', `“${code}” is no van: name one, or mend its kind in locations.csv`)
  }

  model(brand: string, number: string): number {
    const brandId = this.brand(brand)
    const modelId = this.findModel(brandId, normaliseNumber(number))
    if (modelId !== undefined) return modelId
    const asked = { brandId, listed: number, most: mostNearest }
    const nearest = wordNearest(listNearestModelNumbers(this.#database, asked))
    throw new RowFault(
      'model_number',
      `${brand} has no model “${number}”: add it to models.csv, or mend the number${nearest}`,
    )
  }

  /** The model of a brand under this key, where there is one. Asked for singly, as a shop may have a million. */
  findModel(brandId: number, key: string): number | undefined {
    const models = this.#models.get(brandId)
    if (models !== undefined) return models.get(key)
    const sql = 'SELECT model_id FROM model WHERE model_key = ? AND brand_id = ?'
    return this.#database.row(modelRow, sql, key, brandId)?.model_id
  }

  addModel(added: AddedModel): void {
    this.#models.get(added.brandId)?.set(added.key, added.modelId)
  }

  /** The unit of a family's attribute, which must have been declared. */
  attributeUnit(
    familyId: number,
    { family, attribute, column }: { family: string; attribute: string; column: string },
  ): string {
    const unit = this.attributesOf(familyId).get(attribute)
    if (unit !== undefined) return unit
    throw new RowFault(
      column,
      `family ${family} declares no attribute “${attribute}”: add it to attributes.csv, or mend the name`,
    )
  }

  /** All models of a brand by their key. */
  modelsOf(brandId: number): ReadonlyMap<string, number> {
    let models = this.#models.get(brandId)
    if (models === undefined) {
      models = new Map<string, number>()
      fill(models, this.#database.tuples('SELECT model_key, model_id FROM model WHERE brand_id = ?', brandId))
      this.#models.set(brandId, models)
    }
    return models
  }

  attributesOf(familyId: number): Map<string, string> {
    return inner(this.attributes, familyId)
  }

  /** The same few thousand numbers come in a hundred thousand rows, and making a key is slow. */
  keyOf(number: string): string {
    let key = this.#keys.get(number)
    if (key === undefined) {
      const kept = ownText(number)
      key = normaliseNumber(kept)
      this.#keys.set(kept, key)
    }
    return key
  }

  /** The key of a number that is about to be stored under it. */
  keyFor(number: string, column: string): string {
    const key = this.keyOf(number)
    if (key === '')
      throw new RowFault(column, `“${number}” holds no letter and no digit: write the number as printed`)
    return key
  }
}

function fill(map: Map<string, number>, rows: Iterable<readonly unknown[]>): void {
  for (const [key, id] of rows as Iterable<[string, number]>) map.set(key, id)
}

function inner<Value>(outer: Map<number, Map<string, Value>>, id: number): Map<string, Value> {
  let map = outer.get(id)
  if (map === undefined) {
    map = new Map()
    outer.set(id, map)
  }
  return map
}

/** Enough to see a slip of the hand. */
const mostNearest = 3

function wordNearest(numbers: readonly string[]): string {
  return numbers.length === 0 ? '' : ` (nearest: ${numbers.join(', ')})`
}

/** The wording is made only for a row that needs it: hundreds of thousands do not. */
function found(
  map: ReadonlyMap<string, number>,
  key: string,
  column: string,
  wordMissing: () => string,
): number {
  const id = map.get(key)
  if (id === undefined) throw new RowFault(column, wordMissing())
  return id
}
