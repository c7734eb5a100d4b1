import { type Series, unknown } from '../demand/gather-series.ts'

/** After so many days a demand weighs half, so that each of these means remembers for another while. */
export const halfLivesDays = [30, 75, 165, 340, 1400] as const

/** What is left of the weight of a bucket after one more, for each of the half-lives. */
export function decaysOf(daysPerBucket: number): number[] {
  return halfLivesDays.map(days => 0.5 ** (daysPerBucket / days))
}

/** A part's history as its smoothed means per bucket, and how the sizes of its demands vary, up to some bucket. */
export interface SmoothedHistory {
  readonly means: readonly number[]
  /** Sum of the pieces, and of their squares by bucket. */
  readonly pieces: number
  readonly squares: number
}

/**
 * Exponentially weighted means of a part's demand up to (not with) each of these buckets, which stand in their order. The
 * weights of what was seen add up to one from the first bucket on; an unknown bucket says nothing. A bucket before the
 * first demand has no history and is left out.
 */
export function smoothHistory(
  series: Series,
  decays: readonly number[],
  upTo: readonly number[],
): (SmoothedHistory | undefined)[] {
  const sums = new Float64Array(decays.length)
  const weights = new Float64Array(decays.length)
  const found: (SmoothedHistory | undefined)[] = []
  let [pieces, squares, at] = [0, 0, 0]
  for (const end of upTo) {
    for (; at < end; at++) {
      const demand = series[at] ?? unknown
      if (demand === unknown) continue
      pieces += demand
      squares += demand * demand
      // By index: this is done for every week of every part.
      for (let k = 0; k < decays.length; k++) {
        const decay = decays[k] ?? 0
        sums[k] = (sums[k] ?? 0) * decay + demand
        weights[k] = (weights[k] ?? 0) * decay + 1
      }
    }
    found.push(
      pieces === 0
        ? undefined
        : { pieces, squares, means: Array.from(sums, (sum, k) => sum / (weights[k] ?? 1)) },
    )
  }
  return found
}
