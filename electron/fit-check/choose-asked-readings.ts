import type { Supposition } from './suppose-appliances.ts'

/** A reading that would tell suppositions apart: one plate position, the brand, or a named reading. */
export interface ReadingChoice {
  readonly reading: string
  /** From 1 over the plate key; only for `model-number`. */
  readonly position: number | null
  readonly shows: (supposition: Supposition) => string
}

/**
 * The fewest readings that decide: smallest number first, then the easiest to read. Exact, by trying every set, while
 * that takes few comparisons; beyond that the reading that leaves least uncertainty is taken, one by one
 * (greedy information gain), and what turned out not to be needed is dropped.
 */
export function chooseAskedReadings(suppositions: readonly Supposition[]): readonly ReadingChoice[] {
  const table = tabulate(suppositions)
  return findSmallestSet(table) ?? findGreedySet(table)
}

/** About twenty milliseconds of trying. */
const mostComparisons = 2_000_000

/** The suppositions as small whole numbers: one column a reading, one row a supposition, and each row's outcome. */
interface Table {
  readonly choices: readonly ReadingChoice[]
  readonly columns: readonly Int32Array[]
  readonly outcomes: Int32Array
}

function tabulate(suppositions: readonly Supposition[]): Table {
  const all = [...namedReadings(suppositions), brandChoice, ...plateChoices(suppositions)]
  const numbered = all.map(choice => ({ choice, column: numberLabels(suppositions.map(choice.shows)) }))
  const telling = numbered.filter(({ column }) => column.some(label => label !== column[0]))
  return {
    choices: telling.map(({ choice }) => choice),
    columns: telling.map(({ column }) => column),
    outcomes: numberLabels(suppositions.map(outcomeLabel)),
  }
}

/** Two suppositions need no telling apart when the same part would be sold with the same changes, or none would. */
export function outcomeLabel({ answer }: Supposition): string {
  return answer.outcome === 'yes' ? `yes ${answer.current} ${[...answer.alsoNeeds].sort().join('|')}` : 'no'
}

/** Readings in the order of ease: figures on the plate, its date, its serial, then what must be measured. */
function namedReadings(suppositions: readonly Supposition[]): ReadingChoice[] {
  const names = new Set(suppositions.flatMap(({ shows }) => [...shows.keys()]))
  const ease = ['volts', 'voltage', 'hertz', 'frequency', 'watts', 'made', 'serial']
  const rank = (name: string) => (ease.indexOf(name) + ease.length + 1) % (ease.length + 1)
  return [...names]
    .sort((one, other) => rank(one) - rank(other) || (one < other ? -1 : 1))
    .map(reading => ({ reading, position: null, shows: ({ shows }) => shows.get(reading) ?? '' }))
}

const brandChoice: ReadingChoice = { reading: 'brand', position: null, shows: ({ model }) => model.brand }

function plateChoices(suppositions: readonly Supposition[]): ReadingChoice[] {
  const longest = suppositions.reduce((most, { model }) => Math.max(most, model.key.length), 0)
  return Array.from({ length: longest }, (_, at) => ({
    reading: 'model-number',
    position: at + 1,
    shows: ({ model }) => model.key[at] ?? '',
  }))
}

function numberLabels(labels: readonly string[]): Int32Array {
  const numbers = new Map<string, number>()
  return Int32Array.from(labels, label => {
    const known = numbers.get(label)
    if (known !== undefined) return known
    numbers.set(label, numbers.size)
    return numbers.size - 1
  })
}

/** Undefined once the sets of the next size are too many to try. */
function findSmallestSet(table: Table): readonly ReadingChoice[] | undefined {
  let comparisons = table.outcomes.length
  for (let size = 1; size <= table.choices.length; size++) {
    comparisons *= (table.choices.length - size + 1) / size
    if (comparisons > mostComparisons) return undefined
    for (const set of setsOf(table.choices.length, size)) {
      if (decides(table, set)) return set.map(at => chosen(table, at))
    }
  }
  return undefined
}

/** Sets of `size` whole numbers below `count`, in dictionary order: the easiest readings first. */
function* setsOf(count: number, size: number, from = 0): Generator<number[]> {
  if (size === 0) {
    yield []
    return
  }
  for (let first = from; first <= count - size; first++)
    for (const rest of setsOf(count, size - 1, first + 1)) yield [first, ...rest]
}

/** True when suppositions that show the same in every reading of the set have the same outcome. */
function decides({ columns, outcomes }: Table, set: readonly number[]): boolean {
  const seen = new Map<string | number, number>()
  for (let row = 0; row < outcomes.length; row++) {
    const shown =
      set.length === 1 ? (columns[set[0] ?? 0]?.[row] ?? 0) : set.map(at => columns[at]?.[row]).join()
    const outcome = outcomes[row] ?? 0
    const known = seen.get(shown)
    if (known === undefined) seen.set(shown, outcome)
    else if (known !== outcome) return false
  }
  return true
}

function findGreedySet(table: Table): readonly ReadingChoice[] {
  let cells = new Int32Array(table.outcomes.length)
  const taken: number[] = []
  while (uncertainty(cells, table.outcomes) > 0) {
    const best = bestNextReading(table, cells, taken)
    taken.push(best.at)
    cells = best.split
  }
  return withoutNeedless(table, taken).map(at => chosen(table, at))
}

/** The one that leaves least uncertainty. Two readings may tell only together: then the easiest goes first. */
function bestNextReading({ columns, outcomes }: Table, cells: Int32Array, taken: readonly number[]) {
  const left = columns.flatMap((column, at) => {
    if (taken.includes(at)) return []
    const split = splitCells(cells, column)
    return [{ at, split, bits: uncertainty(split, outcomes) }]
  })
  const [first, ...others] = left
  if (first === undefined)
    throw new Error('readings tell the open suppositions apart, or their outcomes agree')
  return others.reduce((least, one) => (one.bits < least.bits - 1e-9 ? one : least), first)
}

/** A reading taken early may be settled by those taken after it. */
function withoutNeedless(table: Table, taken: readonly number[]): readonly number[] {
  return taken.reduce((kept, at) => {
    const rest = kept.filter(other => other !== at)
    return rest.length > 0 && decides(table, rest) ? rest : kept
  }, taken)
}

function splitCells(cells: Int32Array, column: Int32Array): Int32Array<ArrayBuffer> {
  const width = column.reduce((most, label) => Math.max(most, label), 0) + 1
  const numbers = new Map<number, number>()
  return Int32Array.from(cells, (cell, row) => {
    const both = cell * width + (column[row] ?? 0)
    const known = numbers.get(both)
    if (known !== undefined) return known
    numbers.set(both, numbers.size)
    return numbers.size - 1
  })
}

/** Bits still needed to know the outcome once the cell is known, times the number of rows (conditional entropy). */
function uncertainty(cells: Int32Array, outcomes: Int32Array): number {
  const outcomeCount = outcomes.reduce((most, label) => Math.max(most, label), 0) + 1
  const inCell = new Map<number, number>()
  const inBoth = new Map<number, number>()
  for (let row = 0; row < cells.length; row++) {
    const cell = cells[row] ?? 0
    const both = cell * outcomeCount + (outcomes[row] ?? 0)
    inCell.set(cell, (inCell.get(cell) ?? 0) + 1)
    inBoth.set(both, (inBoth.get(both) ?? 0) + 1)
  }
  let bits = 0
  for (const [both, count] of inBoth)
    bits -= count * Math.log2(count / (inCell.get(Math.floor(both / outcomeCount)) ?? 1))
  return bits
}

function chosen({ choices }: Table, at: number): ReadingChoice {
  const choice = choices[at]
  if (choice === undefined) throw new Error(`a set names columns of its table, but ${at} is not one`)
  return choice
}
