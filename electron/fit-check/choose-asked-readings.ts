import type { AskChosen } from '../../shared-schemas/fit-check.ts'
import { isSoonerRead, type ReadInTurn, readSoonest } from './order-readings.ts'
import {
  type Cells,
  countBits,
  isDecided,
  nothingRead,
  type ReadingChoice,
  type ReadingTable,
  readMore,
} from './tabulate-readings.ts'

export interface ChosenReadings {
  /** In the order in which reading them decides soonest. */
  readonly readings: readonly ReadingChoice[]
  /** `fewest`: no smaller set decides, which was proved; `greedy`: a smaller one may. */
  readonly chosen: AskChosen
}

/**
 * The fewest readings that decide. Of sets as small, the one that is expected to decide after the fewest of its
 * readings, each open model being as likely; then the easiest to read. Exact, by trying every set, while that takes
 * few comparisons; beyond that the reading that leaves least uncertainty is taken, one by one (greedy information
 * gain), and what turned out not to be needed is dropped.
 */
export function chooseAskedReadings(table: ReadingTable): ChosenReadings {
  const needed = listNeeded(table)
  const smallest = findSmallestSets(table, needed)
  const sets = smallest ?? [findGreedySet(table, needed)]
  const { order } = sets
    .slice(0, mostSetsOrdered)
    .map(set => readSoonest(table, set, mostComparisons / sets.length))
    .reduce((best: ReadInTurn, one) => (isSoonerRead(one, best) ? one : best))
  return {
    readings: order.flatMap(at => table.choices[at] ?? []),
    chosen: smallest === undefined ? 'greedy' : 'fewest',
  }
}

/** Some ten milliseconds of trying. */
const mostComparisons = 2_000_000

const mostSetsOrdered = 100

/** Readings without which all the others together do not decide: every set that decides has them. */
function listNeeded(table: ReadingTable): number[] {
  const all = table.choices.map((_, at) => at)
  return all.filter(at => !decides(table, without(all, at)))
}

function decides(table: ReadingTable, set: readonly number[]): boolean {
  return isDecided(table, readMore(table, nothingRead(table), set))
}

function without(set: readonly number[], at: number): number[] {
  return set.filter(other => other !== at)
}

/** All that decide of the smallest size, the easiest first; undefined once the sets of the next size are too many to try. */
function findSmallestSets(table: ReadingTable, needed: readonly number[]): number[][] | undefined {
  const others = table.choices.map((_, at) => at).filter(at => !needed.includes(at))
  const cells = readMore(table, nothingRead(table), needed)
  let sets = 1
  for (let size = 0; size <= others.length; size++) {
    if (sets * table.models > mostComparisons) return undefined
    const deciding = [...setsOf(others, size)].filter(set => isDecided(table, readMore(table, cells, set)))
    if (deciding.length > 0) return deciding.map(set => [...needed, ...set].sort((a, b) => a - b))
    sets *= (others.length - size) / (size + 1)
  }
  return undefined
}

/** Sets of `size` of the items, in dictionary order: the easiest readings first. */
function* setsOf(items: readonly number[], size: number): Generator<number[]> {
  if (size === 0) yield []
  else
    for (const [at, first] of items.entries())
      for (const rest of setsOf(items.slice(at + 1), size - 1)) yield [first, ...rest]
}

function findGreedySet(table: ReadingTable, needed: readonly number[]): number[] {
  const taken = [...needed]
  let cells = readMore(table, nothingRead(table), needed)
  while (!isDecided(table, cells)) {
    const best = bestNextReading(table, cells, taken)
    taken.push(best.at)
    cells = best.split
  }
  // A reading taken early may be settled by those taken after it.
  return taken.reduce(
    (kept, at) => (!needed.includes(at) && decides(table, without(kept, at)) ? without(kept, at) : kept),
    taken,
  )
}

/** The one that leaves least uncertainty. Two readings may tell only together: then the easiest goes first. */
function bestNextReading(table: ReadingTable, cells: Cells, taken: readonly number[]) {
  const left = table.choices.flatMap((_, at) => {
    if (taken.includes(at)) return []
    const split = readMore(table, cells, [at])
    return [{ at, split, bits: countBits(table, split) }]
  })
  const [first, ...others] = left
  if (first === undefined)
    throw new Error('readings tell the open suppositions apart, or their outcomes agree')
  return others.reduce((least, one) => (one.bits < least.bits - roundingError ? one : least), first)
}

const roundingError = 1e-6
