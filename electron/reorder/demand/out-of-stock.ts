import { type Series, unknown } from './gather-series.ts'
import type { DayNumber, TimeBuckets } from './time-buckets.ts'

/** How a part's stock changed, day by day, the earliest first. */
export interface StockChange {
  readonly day: DayNumber
  readonly change: number
}

/** A part that has been gone for longer was let go: that nobody takes it then is no demand. */
const longestGapDays = 91

/**
 * Marks the buckets of a part in which nothing was asked for because there was nothing to take: it had been on the shelf
 * before, and was gone from the first day to the last. Nothing is known of the time before the book of the part begins.
 */
export function markOutOfStock(
  series: Series,
  { starts, last }: TimeBuckets,
  changes: readonly StockChange[],
): void {
  let [balance, next] = [0, 0]
  let goneSince: DayNumber | undefined
  const take = (until: DayNumber) => {
    for (; next < changes.length; next++) {
      const { day, change } = changes[next] ?? { day: until + 1, change: 0 }
      if (day > until) return
      balance += change
      if (balance > 0) goneSince = undefined
      else goneSince ??= day
    }
  }
  for (const [at, start] of starts.entries()) {
    const end = (starts[at + 1] ?? last + 1) - 1
    take(start - 1)
    const wasGone = goneSince !== undefined && balance <= 0 && next > 0
    const cameBack = changes.slice(next).some(({ day, change }) => day <= end && change > 0)
    const since = goneSince ?? start
    if (wasGone && !cameBack && series[at] === 0 && end - since <= longestGapDays) series[at] = unknown
  }
}
