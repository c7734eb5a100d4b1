/**
 * The restricted Damerau distance by its definition: the fewest insertions, deletions, substitutions and swaps of
 * neighbours, none of which touches a stretch twice. Slow and plain, to check the fast ones against.
 */
export function restrictedDistance(one: string, other: string, isAlike = isSame): number {
  return distance(one, other, isAlike, true)
}

/** Levenshtein's distance: the same without swaps. */
export function levenshteinDistance(one: string, other: string): number {
  return distance(one, other, isSame, false)
}

function distance(one: string, other: string, isAlike: typeof isSame, withSwaps: boolean): number {
  const table = Array.from({ length: one.length + 1 }, () => new Array<number>(other.length + 1).fill(0))
  const at = (i: number, j: number) => table[i]?.[j] ?? Number.NaN
  for (let i = 0; i <= one.length; i++)
    for (let j = 0; j <= other.length; j++) {
      const ways = [i === 0 && j === 0 ? 0 : Infinity]
      if (i > 0) ways.push(at(i - 1, j) + 1)
      if (j > 0) ways.push(at(i, j - 1) + 1)
      if (i > 0 && j > 0) ways.push(at(i - 1, j - 1) + (isAlike(one[i - 1], other[j - 1]) ? 0 : 1))
      const isSwapped = isAlike(one[i - 1], other[j - 2]) && isAlike(one[i - 2], other[j - 1])
      if (withSwaps && i > 1 && j > 1 && isSwapped) ways.push(at(i - 2, j - 2) + 1)
      const row = table[i]
      if (row !== undefined) row[j] = Math.min(...ways)
    }
  return at(one.length, other.length)
}

function isSame(one: string | undefined, other: string | undefined): boolean {
  return one === other
}
