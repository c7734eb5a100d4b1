/** Is this a year of this century or the last, a month of one or a day of one, in a calendar that has it? */
export function isPartialDate(written: string): boolean {
  const found = /^((?:19|20)\d\d)(?:-(\d\d)(?:-(\d\d))?)?$/.exec(written)
  if (found === null) return false
  const [, year, month = '01', day = '01'] = found
  const date = new Date(`${year}-${month}-${day}T00:00:00Z`)
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(`${year}-${month}-${day}`)
}

/** Does a range of dates begin after it has ended? `2014` to `2014-03` does not: a year may begin and end within it. */
export function isDateRangeInverted(from: string | null, to: string | null): boolean {
  return from !== null && to !== null && from > to && !from.startsWith(to)
}
