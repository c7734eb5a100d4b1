import { type DaySpan, daysOf } from './made-dates.ts'

/** How one brand writes the date of making into its serials, as the catalogue states it. */
export interface DateCode {
  /** A regular expression over the serial with the groups `year` and `week` or `month`. */
  readonly pattern: string
  /** What the groups mean: `year=2-digit;week=2-digit`, `year=letter A=2004 skip I O`. */
  readonly means: string
}

/**
 * The spans in which an appliance with this serial may have been made, earliest first; a one-digit year leaves one a
 * decade. Empty: no date code of the brand speaks of such a serial.
 */
export function readDateCodes(codes: readonly DateCode[], serial: string): DaySpan[] {
  const spans = codes.flatMap(code => readDateCode(code, serial))
  return spans.sort((one, other) => one.first - other.first)
}

function readDateCode({ pattern, means }: DateCode, serial: string): DaySpan[] {
  const groups = new RegExp(pattern, 'u').exec(serial.trim().toUpperCase())?.groups
  if (groups === undefined) return []
  const how = new Map(means.split(';').map(one => splitOnce(one.trim(), '=')))
  const numbersOf = (group: string): number[] => readGroup(groups[group], how.get(group), group === 'year')
  const years = numbersOf('year')
  if (groups.week !== undefined)
    return pair(years, numbersOf('week')).flatMap(([year, week]) => daysOfWeek(year, week))
  if (groups.month !== undefined)
    return pair(years, numbersOf('month')).flatMap(([year, month]) => daysOfMonth(year, month))
  return years.map(year => daysOf(String(year)))
}

function splitOnce(text: string, mark: string): [string, string] {
  const at = text.indexOf(mark)
  return at < 0 ? [text, ''] : [text.slice(0, at).trim(), text.slice(at + mark.length).trim()]
}

function pair(years: readonly number[], numbers: readonly number[]): [number, number][] {
  return years.flatMap(year => numbers.map((number): [number, number] => [year, number]))
}

/** The numbers that a group may stand for. Nothing where its meaning is not one of those that are known. */
function readGroup(shown: string | undefined, how: string | undefined, isYear: boolean): number[] {
  if (shown === undefined || how === undefined) return []
  if (how.startsWith('letter')) return readLetter(shown, how)
  const figures = Number(shown)
  if (!Number.isInteger(figures)) return []
  if (!isYear || how === '4-digit') return [figures]
  if (how === '2-digit') return [figures < firstOfLastCentury ? 2000 + figures : 1900 + figures]
  if (how === '1-digit') return decades.map(decade => decade + figures)
  return []
}

/** Two figures from 70 on are of the last century: no rating plate is older, and none is of 2070. */
const firstOfLastCentury = 70
const decades = [1980, 1990, 2000, 2010, 2020, 2030]

/** `letter A=2004 skip I O`: letters count on from the first, the skipped ones left out. */
function readLetter(shown: string, how: string): number[] {
  const found = /^letter ([A-Z])=(\d+)(?: skip ((?:[A-Z] ?)+))?$/.exec(how)
  if (found === null) return []
  const [, first = '', number, skipped = ''] = found
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].filter(letter => !skipped.split(' ').includes(letter))
  const steps = letters.indexOf(shown) - letters.indexOf(first)
  return letters.includes(shown) && steps >= 0 ? [Number(number) + steps] : []
}

function daysOfMonth(year: number, month: number): DaySpan[] {
  return month >= 1 && month <= 12 ? [daysOf(`${year}-${String(month).padStart(2, '0')}`)] : []
}

/** Week 1 is the week of 4 January, weeks begin on Monday, and a year has 52 or 53 (ISO 8601-1:2019, 3.1.1.23). */
function daysOfWeek(year: number, week: number): DaySpan[] {
  const first = firstMonday(year) + (week - 1) * 7
  return week >= 1 && first < firstMonday(year + 1) ? [{ first, last: first + 6 }] : []
}

function firstMonday(year: number): number {
  const fourth = daysOf(`${year}-01-04`).first
  return fourth - ((new Date(fourth * 86_400_000).getUTCDay() + 6) % 7)
}
