import type { Bucket } from '../../../shared-schemas/stock-levels.ts'

/** A day as a whole number of days since 1 January 1970. */
export type DayNumber = number

/** Weeks or months one after the other, the last of which ends on the day asked about, so that all of them are whole. */
export interface TimeBuckets {
  readonly bucket: Bucket
  /** First days, the earliest first. */
  readonly starts: readonly DayNumber[]
  readonly last: DayNumber
}

/** The mean Gregorian month. */
export const daysPerMonth = 365.2425 / 12

export function daysPer(bucket: Bucket): number {
  return bucket === 'week' ? 7 : daysPerMonth
}

export function dayNumberOf(isoDate: string): DayNumber {
  return Math.round(Date.parse(`${isoDate}T00:00:00Z`) / millisecondsPerDay)
}

export function isoDateOf(day: DayNumber): string {
  return new Date(day * millisecondsPerDay).toISOString().slice(0, 10)
}

const millisecondsPerDay = 86_400_000

/** The buckets from the one that holds `first` on, but no more than `most` of them. None when nothing happened by `last`. */
export function layOutBuckets(bucket: Bucket, first: DayNumber, last: DayNumber, most: number): TimeBuckets {
  const starts: DayNumber[] = []
  for (let back = 1; back <= most; back++) {
    const end = endOfBucket(bucket, last, back - 1)
    if (end < first) break
    starts.unshift(endOfBucket(bucket, last, back) + 1)
  }
  return { bucket, starts, last }
}

/** Which bucket a day falls into; -1 for a day before the first or after the last. */
export function bucketOf({ bucket, starts, last }: TimeBuckets, day: DayNumber): number {
  const first = starts[0]
  if (first === undefined || day < first || day > last) return -1
  if (bucket === 'week') return Math.floor((day - first) / 7)
  let [low, high] = [0, starts.length - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if ((starts[middle] ?? Number.POSITIVE_INFINITY) <= day) low = middle
    else high = middle - 1
  }
  return low
}

/** So many buckets before `last`; from the end of a month to the end of a month, else to the same day or the month's last. */
function endOfBucket(bucket: Bucket, last: DayNumber, back: number): DayNumber {
  if (bucket === 'week') return last - 7 * back
  const date = new Date(last * millisecondsPerDay)
  const [year, month] = [date.getUTCFullYear(), date.getUTCMonth() - back]
  const isMonthEnd = date.getUTCDate() === lastDayOf(date.getUTCFullYear(), date.getUTCMonth())
  const day = isMonthEnd ? lastDayOf(year, month) : Math.min(date.getUTCDate(), lastDayOf(year, month))
  return Math.round(Date.UTC(year, month, day) / millisecondsPerDay)
}

function lastDayOf(year: number, month: number): number {
  return new Date(Date.UTC(year, month + 1, 0)).getUTCDate()
}
