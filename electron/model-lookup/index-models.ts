import type { ModelId } from '../../shared-schemas/identifiers.ts'
import { normaliseNumber } from '../catalogue/normalise-number.ts'
import { createAlphabet } from './fold-characters.ts'
import { buildKeyTable, type KeyTable } from './key-table.ts'
import type { OpenModel } from './open-models.ts'
import { type KnownBrands, listKnownBrands } from './recognise-brand.ts'

export interface ModelRow {
  readonly modelId: number
  readonly brand: string
  readonly modelNumber: string
  readonly key: string
  readonly applianceType: string
}

export interface SalesNameRow {
  readonly brand: string
  readonly salesName: string
  readonly key: string
  readonly modelId: number
}

export interface CatalogueNumbers {
  readonly catalogueVersion: number
  /** Every brand, also one without models. */
  readonly brands: readonly string[]
  readonly models: readonly ModelRow[]
  readonly salesNames: readonly SalesNameRow[]
}

/** Every printed number of the catalogue, ready to be searched. A model is named by its position in `numbers`. */
export interface ModelIndex {
  readonly catalogueVersion: number
  readonly brands: readonly string[]
  readonly knownBrands: KnownBrands
  readonly applianceTypes: readonly string[]
  readonly numbers: KeyTable
  readonly salesNames: KeyTable
  /** The models that a sales name covers: `covered` from `coveredStart[position]` to `coveredStart[position + 1]`. */
  readonly coveredStart: Uint32Array
  readonly covered: Uint32Array
  readonly modelIds: Uint32Array
  readonly applianceTypeOf: Uint8Array
  /** All keys and model numbers, one after the other: a million short strings would each cost more than they say. */
  readonly keys: PackedTexts
  readonly modelNumbers: PackedTexts
  readonly salesNameKeys: PackedTexts
}

interface PackedTexts {
  readonly text: string
  readonly start: Uint32Array
}

/** Lays the catalogue's numbers out for searching. */
export function indexModels({ catalogueVersion, brands, models, salesNames }: CatalogueNumbers): ModelIndex {
  const alphabet = createAlphabet(charactersOf([models, salesNames]))
  const brandNumbers = numberNames(brands)
  const applianceTypes = [...new Set(models.map(({ applianceType }) => applianceType))]
  const typeNumbers = numberNames(applianceTypes)
  const numbers = buildKeyTable(alphabet, {
    keys: models.map(({ key }) => key),
    printed: models.map(({ modelNumber }) => modelNumber),
    brands: Uint16Array.from(models, ({ brand }) => numberOf(brandNumbers, brand)),
  })
  const rows = Array.from(numbers.rowAt, row => models[row] as ModelRow)
  const modelIds = Uint32Array.from(rows, ({ modelId }) => modelId)
  return {
    catalogueVersion,
    brands,
    knownBrands: listKnownBrands(brands),
    applianceTypes,
    numbers,
    modelIds,
    applianceTypeOf: Uint8Array.from(rows, ({ applianceType }) => numberOf(typeNumbers, applianceType)),
    keys: packTexts(rows.map(({ key }) => key)),
    modelNumbers: packTexts(rows.map(({ modelNumber }) => modelNumber)),
    ...indexSalesNames(alphabet, salesNames, brandNumbers, modelIds),
  }
}

/** One model's facts by its position. */
export function modelAt(index: ModelIndex, position: number): OpenModel {
  return {
    // The ids came out of the database's model_id column, which is what the brand says.
    modelId: index.modelIds[position] as ModelId,
    brand: brandAt(index, position),
    modelNumber: textAt(index.modelNumbers, position),
    key: textAt(index.keys, position),
    applianceType: index.applianceTypes[index.applianceTypeOf[position] as number] ?? '',
  }
}

/** A model's brand by the model's position. */
export function brandAt({ brands, numbers }: ModelIndex, position: number): string {
  return brands[numbers.brandOf[position] as number] ?? ''
}

/** Which models a sales name covers, in order. */
export function modelsCovered({ covered, coveredStart }: ModelIndex, namePosition: number): Uint32Array {
  return covered.subarray(coveredStart[namePosition], coveredStart[namePosition + 1])
}

/** The key of a sales name by its position. */
export function salesNameKeyAt({ salesNameKeys }: ModelIndex, position: number): string {
  return textAt(salesNameKeys, position)
}

/** Only other than plain characters matter to the alphabet, and few keys have any. */
function* charactersOf(lists: readonly (readonly { readonly key: string }[])[]): Iterable<string> {
  for (const list of lists)
    for (const { key } of list)
      if (!/^[0-9A-Z]*$/.test(key)) for (let i = 0; i < key.length; i++) yield key.charAt(i)
}

function numberNames(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map(names.map((name, number) => [name, number]))
}

function numberOf(numbers: ReadonlyMap<string, number>, name: string): number {
  const number = numbers.get(name)
  if (number === undefined) throw new Error(`every name is listed before it is used, but ${name} is not`)
  return number
}

function packTexts(texts: readonly string[]): PackedTexts {
  const start = new Uint32Array(texts.length + 1)
  texts.forEach((text, at) => {
    start[at + 1] = (start[at] as number) + text.length
  })
  return { text: texts.join(''), start }
}

function textAt({ text, start }: PackedTexts, position: number): string {
  return text.slice(start[position], start[position + 1])
}

function indexSalesNames(
  alphabet: KeyTable['alphabet'],
  rows: readonly SalesNameRow[],
  brandNumbers: ReadonlyMap<string, number>,
  modelIds: Uint32Array,
): Pick<ModelIndex, 'salesNames' | 'salesNameKeys' | 'coveredStart' | 'covered'> {
  const positionOf = new Map<number, number>()
  modelIds.forEach((id, position) => {
    positionOf.set(id, position)
  })
  // A load by another program may fall between the two reads; the version, read before both, then moves on.
  const groups = groupByName(rows.filter(({ modelId }) => positionOf.has(modelId)))
  const salesNamesTable = buildKeyTable(alphabet, {
    keys: groups.map(([first]) => first.key),
    printed: groups.map(([first]) => first.salesName),
    brands: Uint16Array.from(groups, ([first]) => numberOf(brandNumbers, first.brand)),
  })
  const coveredStart = new Uint32Array(groups.length + 1)
  const covered: number[] = []
  salesNamesTable.rowAt.forEach((row, position) => {
    for (const { modelId } of groups[row] ?? []) covered.push(positionOf.get(modelId) as number)
    coveredStart[position + 1] = covered.length
  })
  const salesNameKeys = packTexts(Array.from(salesNamesTable.rowAt, row => groups[row]?.[0].key ?? ''))
  return { salesNames: salesNamesTable, salesNameKeys, coveredStart, covered: Uint32Array.from(covered) }
}

type SalesNameGroup = [SalesNameRow, ...SalesNameRow[]]

/** The rows of one writing of one brand's sales name together, in key order. */
function groupByName(rows: readonly SalesNameRow[]): SalesNameGroup[] {
  const groups = new Map<string, SalesNameGroup>()
  for (const row of rows.flatMap(writingsOf)) {
    const name = `${row.key}\n${row.brand}`
    const group = groups.get(name)
    if (group === undefined) groups.set(name, [row])
    else group.push(row)
  }
  return [...groups].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, group]) => group)
}

/** Some makers print their own name before the sales name, and people leave it out. */
function writingsOf(row: SalesNameRow): SalesNameRow[] {
  const brandKey = normaliseNumber(row.brand)
  const rest = row.key.startsWith(brandKey) ? row.key.slice(brandKey.length) : ''
  return rest.length >= shortestName ? [row, { ...row, key: rest }] : [row]
}

const shortestName = 3
