import type { Possibility, Supposition } from './suppose-appliances.ts'

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
  readonly columns: readonly Column[]
  readonly outcomes: Column
}

/** A whole number from 0 for each row, equal where the rows show the same. */
interface Column {
  readonly labels: Int32Array
  /** How many different labels there are. */
  readonly count: number
}

function tabulate(suppositions: readonly Supposition[]): Table {
  const all = [...plateChoices(suppositions), brandChoice, ...namedReadings(suppositions)]
  const numbered = all.map(choice => ({ choice, column: numberLabels(suppositions.map(choice.shows)) }))
  const telling = numbered.filter(({ column }) => column.count > 1)
  return {
    choices: telling.map(({ choice }) => choice),
    columns: telling.map(({ column }) => column),
    outcomes: numberLabels(suppositions.map(outcomeLabel)),
  }
}

/** Two suppositions need no telling apart when the same part would be sold with the same changes, or none would. */
export function outcomeLabel({ answer }: Possibility): string {
  return answer.outcome === 'yes' ? `yes ${answer.current} ${[...answer.alsoNeeds].sort().join('|')}` : 'no'
}

/** After the number itself, in the order of ease: figures on the plate, its date, its serial, then what must be measured. */
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

function numberLabels(shown: readonly string[]): Column {
  const numbers = new Map<string, number>()
  const labels = Int32Array.from(shown, label => {
    const known = numbers.get(label)
    if (known !== undefined) return known
    numbers.set(label, numbers.size)
    return numbers.size - 1
  })
  return { labels, count: numbers.size }
}

/** Undefined once the sets of the next size are too many to try. */
function findSmallestSet(table: Table): readonly ReadingChoice[] | undefined {
  let comparisons = table.outcomes.labels.length
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
  const cells = set.reduce((split, at) => splitCells(split, columns[at] ?? nothingTold), oneCell(outcomes))
  const outcomeOfCell = new Int32Array(cells.count).fill(-1)
  return cells.labels.every((cell, row) => {
    const outcome = outcomes.labels[row] ?? 0
    if (outcomeOfCell[cell] === -1) outcomeOfCell[cell] = outcome
    return outcomeOfCell[cell] === outcome
  })
}

const nothingTold: Column = { labels: new Int32Array(0), count: 1 }

/** All rows together: nothing has been read yet. */
function oneCell({ labels }: Column): Column {
  return { labels: new Int32Array(labels.length), count: 1 }
}

function findGreedySet(table: Table): readonly ReadingChoice[] {
  let cells = oneCell(table.outcomes)
  const taken: number[] = []
  while (uncertainty(cells, table.outcomes) > 0) {
    const best = bestNextReading(table, cells, taken)
    taken.push(best.at)
    cells = best.split
  }
  return withoutNeedless(table, taken).map(at => chosen(table, at))
}

/** The one that leaves least uncertainty. Two readings may tell only together: then the easiest goes first. */
function bestNextReading({ columns, outcomes }: Table, cells: Column, taken: readonly number[]) {
  const left = columns.flatMap((column, at) => {
    if (taken.includes(at)) return []
    const split = splitCells(cells, column)
    return [{ at, split, bits: uncertainty(split, outcomes) }]
  })
  const [first, ...others] = left
  if (first === undefined)
    throw new Error('readings tell the open suppositions apart, or their outcomes agree')
  return others.reduce((least, one) => (one.bits < least.bits - roundingError ? one : least), first)
}

const roundingError = 1e-6

/** A reading taken early may be settled by those taken after it. */
function withoutNeedless(table: Table, taken: readonly number[]): readonly number[] {
  return taken.reduce((kept, at) => {
    const rest = kept.filter(other => other !== at)
    return rest.length > 0 && decides(table, rest) ? rest : kept
  }, taken)
}

/** Rows stay in one cell when they were in one and show the same. Arrays, since a set of thousands is split many times. */
function splitCells(cells: Column, column: Column): Column {
  const numbers = new Int32Array(cells.count * column.count).fill(-1)
  const labels = new Int32Array(cells.labels.length)
  let count = 0
  for (let row = 0; row < labels.length; row++) {
    const both = (cells.labels[row] ?? 0) * column.count + (column.labels[row] ?? 0)
    if (numbers[both] === -1) numbers[both] = count++
    labels[row] = numbers[both] ?? 0
  }
  return { labels, count }
}

/** Bits still needed to know the outcome once the cell is known, times the number of rows (conditional entropy, Shannon 1948). */
function uncertainty(cells: Column, outcomes: Column): number {
  const inCell = new Int32Array(cells.count)
  const inBoth = new Int32Array(cells.count * outcomes.count)
  for (let row = 0; row < cells.labels.length; row++) {
    const cell = cells.labels[row] ?? 0
    const both = cell * outcomes.count + (outcomes.labels[row] ?? 0)
    inCell[cell] = (inCell[cell] ?? 0) + 1
    inBoth[both] = (inBoth[both] ?? 0) + 1
  }
  return inBoth.reduce((bits, count, both) => {
    const all = inCell[Math.floor(both / outcomes.count)] ?? 0
    return count === 0 || count === all ? bits : bits - count * Math.log2(count / all)
  }, 0)
}

function chosen({ choices }: Table, at: number): ReadingChoice {
  const choice = choices[at]
  if (choice === undefined) throw new Error(`a set names columns of its table, but ${at} is not one`)
  return choice
}
