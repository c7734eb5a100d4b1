/** A closed span of days, each counted from 1970-01-01. An open end is infinite. */
export interface DaySpan {
  readonly first: number
  readonly last: number
}

export const anyDay: DaySpan = { first: Number.NEGATIVE_INFINITY, last: Number.POSITIVE_INFINITY }

/** The days that `2014`, `2014-06` or `2014-06-17` may mean. The text has been checked by its schema. */
export function daysOf(partialDate: string): DaySpan {
  const [year = 0, month, day] = partialDate.split('-').map(Number)
  if (month === undefined) return { first: dayNumber(year, 1, 1), last: dayNumber(year + 1, 1, 1) - 1 }
  if (day === undefined) return { first: dayNumber(year, month, 1), last: dayNumber(year, month + 1, 1) - 1 }
  return { first: dayNumber(year, month, day), last: dayNumber(year, month, day) }
}

/** An inclusive range whose ends may be missing or as coarse as a year: from its first day to its last. */
export function daysBetween(from: string | null, to: string | null): DaySpan {
  return {
    first: from === null ? anyDay.first : daysOf(from).first,
    last: to === null ? anyDay.last : daysOf(to).last,
  }
}

/** The days in both, or undefined where there are none. */
export function daysInBoth(one: DaySpan, other: DaySpan): DaySpan | undefined {
  const both = { first: Math.max(one.first, other.first), last: Math.min(one.last, other.last) }
  return both.first <= both.last ? both : undefined
}

export function covers(outer: DaySpan, inner: DaySpan): boolean {
  return outer.first <= inner.first && inner.last <= outer.last
}

/**
 * Cuts a span wherever one of the ranges begins or ends, so that within each piece every range holds throughout or
 * nowhere. In order of time.
 */
export function cutDays(span: DaySpan, ranges: readonly DaySpan[]): DaySpan[] {
  const starts = ranges.flatMap(range => [range.first, range.last + 1])
  const inside = starts.filter(start => Number.isFinite(start) && start > span.first && start <= span.last)
  const cuts = [span.first, ...new Set(inside)].sort((one, other) => one - other)
  return cuts.map((first, at) => ({ first, last: (cuts[at + 1] ?? span.last + 1) - 1 }))
}

/** A span in words: `to 2014-05`, `2014-06 on`, `2013-02 to 2014-05`, `any date`. Whole months lose their days. */
export function wordDays({ first, last }: DaySpan): string {
  const from = Number.isFinite(first) ? wordDay(first, isFirstOfMonth(first)) : undefined
  const to = Number.isFinite(last) ? wordDay(last, isFirstOfMonth(last + 1)) : undefined
  if (from === undefined && to === undefined) return 'any date'
  if (from === undefined) return `to ${to}`
  if (to === undefined) return `${from} on`
  return from === to ? from : `${from} to ${to}`
}

const millisecondsADay = 86_400_000

function dayNumber(year: number, month: number, day: number): number {
  return Date.UTC(year, month - 1, day) / millisecondsADay
}

function isFirstOfMonth(day: number): boolean {
  return new Date(day * millisecondsADay).getUTCDate() === 1
}

function wordDay(day: number, wholeMonth: boolean): string {
  return new Date(day * millisecondsADay).toISOString().slice(0, wholeMonth ? 7 : 10)
}
