import { countUndecided, nothingRead, type ReadingTable, readMore } from './tabulate-readings.ts'

/** Readings in the order in which to make them. */
export interface ReadInTurn {
  readonly order: readonly number[]
  /** Over all open models, how many readings are made before the verdict is decided. */
  readonly readings: number
}

/**
 * The order in which a person who stops once the verdict is decided makes the fewest of these readings, each open
 * model being as likely. Plate positions are asked for as one, so they are read in one go, from left to right. Exact,
 * over every subset, within so many comparisons; beyond that the reading that leaves fewest undecided goes next.
 */
export function readSoonest(
  table: ReadingTable,
  readings: readonly number[],
  mostComparisons: number,
): ReadInTurn {
  const set = [...readings].sort((one, other) => one - other)
  const isExact = 2 ** set.length * table.models <= mostComparisons
  return isExact ? orderExactly(table, set) : orderGreedily(table, set)
}

export function isSoonerRead(one: ReadInTurn, other: ReadInTurn): boolean {
  return one.readings < other.readings - roundingError
}

const roundingError = 1e-6

function orderExactly(table: ReadingTable, set: readonly number[]): ReadInTurn {
  const known = new Map<string, ReadInTurn>()
  const after = (read: readonly number[]): ReadInTurn => {
    const name = set.map(at => (read.includes(at) ? '1' : '0')).join('')
    const found = known.get(name) ?? continueFrom(read)
    known.set(name, found)
    return found
  }
  const continueFrom = (read: readonly number[]): ReadInTurn => {
    const [first, ...others] = mayFollow(table, set, read).map(at => {
      const rest = after([...read, at])
      return { order: [at, ...rest.order], readings: rest.readings }
    })
    if (first === undefined) return { order: [], readings: 0 }
    const best = others.reduce((least, one) => (isSoonerRead(one, least) ? one : least), first)
    return { ...best, readings: best.readings + undecidedAfter(table, read) }
  }
  return after([])
}

function orderGreedily(table: ReadingTable, set: readonly number[]): ReadInTurn {
  const order: number[] = []
  let readings = 0
  while (order.length < set.length) {
    readings += undecidedAfter(table, order)
    const next = mayFollow(table, set, order).map(at => ({
      order: [at],
      readings: undecidedAfter(table, [...order, at]),
    }))
    order.push(...next.reduce((least, one) => (isSoonerRead(one, least) ? one : least)).order)
  }
  return { order, readings }
}

/** Plate positions from left to right, and once one has been read, the others before anything else. */
function mayFollow({ choices }: ReadingTable, set: readonly number[], read: readonly number[]): number[] {
  const isPosition = (at: number) => choices[at]?.reading === 'model-number'
  const left = set.filter(at => !read.includes(at))
  const nextPosition = left.filter(isPosition).slice(0, 1)
  const isReadingPlate = nextPosition.length > 0 && read.some(isPosition)
  return isReadingPlate ? nextPosition : left.filter(at => !isPosition(at) || nextPosition.includes(at))
}

function undecidedAfter(table: ReadingTable, read: readonly number[]): number {
  return countUndecided(table, readMore(table, nothingRead(table), read))
}
