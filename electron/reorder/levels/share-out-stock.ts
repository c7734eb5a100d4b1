/** A part that may be kept: pieces asked for in a review period, and pieces short in it by the stock that is kept. */
export interface KeptPart {
  readonly mean: number
  readonly short: readonly number[]
  /** Entries of `short` that it gets at least and at most. */
  readonly least: number
  readonly most: number
  /** What one more entry costs, in whatever all parts are measured in. */
  readonly cost: number
}

/**
 * Shares stock out among parts so that all of them together give at least `target` of the pieces asked for, with as little
 * of it as can be: a piece goes where it saves most (marginal analysis; Sherbrooke, Optimal Inventory Modeling of Systems,
 * 2004). Answers the entry of `short` that each part gets; all their most where the target is out of reach.
 */
export function shareOutStock(parts: readonly KeptPart[], target: number): number[] {
  const allowed = (1 - target) * parts.reduce((sum, { mean }) => sum + mean, 0)
  const corners = parts.map(findCorners)
  const shortAt = (saving: number) =>
    parts.reduce((sum, { short }, at) => sum + (short[entryAt(corners[at], saving)] ?? 0), 0)
  let high = corners.reduce((most, found) => Math.max(most, found[1]?.saves ?? 0), 1e-9)
  let low = shortAt(high) <= allowed ? high : 0
  for (let step = 0; step < 40 && low < high; step++) {
    const middle = (low + high) / 2
    if (shortAt(middle) <= allowed) low = middle
    else high = middle
  }
  return corners.map(found => entryAt(found, low))
}

/** An entry of a part's curve, and what each piece saves that leads to it from the corner before. */
interface Corner {
  readonly at: number
  readonly saves: number
}

/** The corners of the lower hull of the curve, so that each further piece saves less than the one before. */
function findCorners({ short, least, most, cost }: KeptPart): readonly Corner[] {
  const last = Math.min(most, short.length - 1)
  const first = Math.min(least, last)
  const corners: Corner[] = [{ at: first, saves: Number.POSITIVE_INFINITY }]
  for (let at = first + 1; at <= last; at++) {
    let saves = savedBetween(short, corners.at(-1)?.at ?? first, at, cost)
    while (corners.length > 1 && saves >= (corners.at(-1)?.saves ?? 0)) {
      corners.pop()
      saves = savedBetween(short, corners.at(-1)?.at ?? first, at, cost)
    }
    corners.push({ at, saves })
  }
  return corners
}

function savedBetween(short: readonly number[], from: number, to: number, cost: number): number {
  return ((short[from] ?? 0) - (short[to] ?? 0)) / (cost * (to - from))
}

/** The last corner that saves more than this. */
function entryAt(corners: readonly Corner[] = [], saving: number): number {
  let [low, high] = [0, corners.length - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if ((corners[middle]?.saves ?? 0) > saving) low = middle
    else high = middle - 1
  }
  return corners[low]?.at ?? 0
}
