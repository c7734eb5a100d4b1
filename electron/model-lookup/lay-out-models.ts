import { normaliseNumber } from '../catalogue/normalise-number.ts'
import { type Alphabet, createAlphabet, extendAlphabet } from './fold-characters.ts'
import { buildKeyTable, type KeyTable, type Numbers, narrowest } from './key-table.ts'
import { markSeparators } from './printed-forms.ts'

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

/** Models with all of their sales names. */
export interface PrintedNumbers {
  readonly models: readonly ModelRow[]
  readonly salesNames: readonly SalesNameRow[]
}

/** The printed numbers of some models in flat arrays, ready to be searched and to be kept. */
export interface ModelLayer {
  readonly brands: readonly string[]
  readonly applianceTypes: readonly string[]
  /** `brandOf` is a place in `brands`, here and in `salesNames`. */
  readonly numbers: KeyTable
  readonly modelIds: Uint32Array
  /** Places in `applianceTypes`. */
  readonly applianceTypeOf: Numbers
  readonly salesNames: KeyTable
  /** The models that a sales name covers: `covered` from `coveredStart[position]` to `coveredStart[position + 1]`. */
  readonly coveredStart: Uint32Array
  readonly covered: Uint32Array
}

/** Lays these models out for searching, in an alphabet that has every character of theirs besides those it had. */
export function layOutModels(
  { models, salesNames }: PrintedNumbers,
  startingWith: Alphabet = createAlphabet([]),
): ModelLayer {
  const alphabet = extendAlphabet(startingWith, charactersOf([models, salesNames]))
  const brands = new NameCollector()
  const types = new NameCollector()
  const { table: numbers, rowAt } = buildKeyTable(alphabet, {
    keys: models.map(({ key }) => key),
    printed: models.map(({ modelNumber }) => modelNumber),
    brands: Uint32Array.from(models, ({ brand }) => brands.numberOf(brand)),
  })
  const rowOf = (position: number) => models[rowAt[position] as number] as ModelRow
  const modelIds = Uint32Array.from(rowAt, (_, position) => rowOf(position).modelId)
  return {
    numbers,
    modelIds,
    applianceTypeOf: narrowest(
      Uint32Array.from(rowAt, (_, position) => types.numberOf(rowOf(position).applianceType)),
    ),
    ...layOutSalesNames(alphabet, salesNames, { brands, modelIds }),
    brands: brands.names,
    applianceTypes: types.names,
  }
}

class NameCollector {
  readonly names: string[] = []
  readonly #numbers = new Map<string, number>()

  numberOf(name: string): number {
    const known = this.#numbers.get(name)
    if (known !== undefined) return known
    const number = this.names.push(name) - 1
    this.#numbers.set(name, number)
    return number
  }
}

/** Only other than plain characters matter to the alphabet, and few keys have any. */
function* charactersOf(lists: readonly (readonly { readonly key: string }[])[]): Iterable<string> {
  for (const list of lists)
    for (const { key } of list)
      if (!/^[0-9A-Z]*$/.test(key)) for (let i = 0; i < key.length; i++) yield key.charAt(i)
}

function layOutSalesNames(
  alphabet: Alphabet,
  rows: readonly SalesNameRow[],
  { brands, modelIds }: { readonly brands: NameCollector; readonly modelIds: Uint32Array },
): Pick<ModelLayer, 'salesNames' | 'coveredStart' | 'covered'> {
  const positionOf = rows.length === 0 ? new Map<number, number>() : placesOf(modelIds)
  // A load by another program may fall between the two reads; the version, read before both, then moves on.
  const groups = groupByWriting(rows.filter(({ modelId }) => positionOf.has(modelId)))
  const { table: salesNames, rowAt } = buildKeyTable(alphabet, {
    keys: groups.map(([first]) => first.key),
    printed: groups.map(([first]) => first.salesName),
    brands: Uint32Array.from(groups, ([first]) => brands.numberOf(first.brand)),
  })
  const coveredStart = new Uint32Array(groups.length + 1)
  const covered: number[] = []
  rowAt.forEach((row, position) => {
    for (const { modelId } of groups[row] ?? []) covered.push(positionOf.get(modelId) as number)
    coveredStart[position + 1] = covered.length
  })
  return { salesNames, coveredStart, covered: Uint32Array.from(covered) }
}

function placesOf(modelIds: Uint32Array): ReadonlyMap<number, number> {
  return new Map(Array.from(modelIds, (modelId, position) => [modelId, position] as const))
}

type SalesNameGroup = [SalesNameRow, ...SalesNameRow[]]

/** The rows of one brand's sales name together, as far as it is divided alike. */
function groupByWriting(rows: readonly SalesNameRow[]): SalesNameGroup[] {
  const groups = new Map<string, SalesNameGroup>()
  for (const row of rows.flatMap(writingsOf)) {
    const writing = `${row.key}\n${row.brand}\n${markSeparators(row.key, row.salesName)}`
    const group = groups.get(writing)
    if (group === undefined) groups.set(writing, [row])
    else group.push(row)
  }
  return [...groups.values()]
}

/** Some makers print their own name before the sales name, and people leave it out. */
function writingsOf(row: SalesNameRow): SalesNameRow[] {
  const brandKey = normaliseNumber(row.brand)
  const rest = row.key.startsWith(brandKey) ? row.key.slice(brandKey.length) : ''
  return rest.length >= shortestName ? [row, { ...row, key: rest }] : [row]
}

const shortestName = 3
