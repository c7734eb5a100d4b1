import { type DateGroup, type Meaning, readMeanings } from '../catalogue/date-code-meaning.ts'
import { type DaySpan, daysOf } from './made-dates.ts'

/** How one brand writes the date of making into its serials, as the catalogue states it. */
export interface DateCode {
  /** A regular expression over the serial with the groups `year` and perhaps `week` or `month`. */
  readonly pattern: string
  /** What the groups mean, as `readMeanings` takes it. */
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
  const meanings = readMeanings(means)
  if (groups === undefined || meanings === undefined) return []
  const numbersOf = (group: DateGroup) =>
    readGroup(groups[group] ?? '', meanings.get(group) ?? figures, group)
  const years = numbersOf('year')
  if (groups.week !== undefined)
    return pair(years, numbersOf('week')).flatMap(([year, week]) => daysOfWeek(year, week))
  if (groups.month !== undefined)
    return pair(years, numbersOf('month')).flatMap(([year, month]) => daysOfMonth(year, month))
  return years.map(year => daysOf(String(year)))
}

const figures: Meaning = { kind: 'figures' }

function pair(years: readonly number[], numbers: readonly number[]): [number, number][] {
  return years.flatMap(year => numbers.map((number): [number, number] => [year, number]))
}

/** The numbers that a group may stand for: several where a figure leaves the decade open, none where it stands for nothing. */
function readGroup(shown: string, meaning: Meaning, group: DateGroup): number[] {
  switch (meaning.kind) {
    case 'list':
      return [meaning.numbers.get(shown) ?? []].flat()
    case 'letters':
      return countLetters(shown, meaning)
    case 'figures':
      return /^\d+$/.test(shown) ? readFigures(shown, group) : []
  }
}

function readFigures(shown: string, group: DateGroup): number[] {
  const number = Number(shown)
  if (group !== 'year' || shown.length === 4) return [number]
  if (shown.length === 2) return [number < firstOfLastCentury ? 2000 + number : 1900 + number]
  return shown.length === 1 ? decades.map(decade => decade + number) : []
}

/** Two figures from 70 on are of the last century: no rating plate is older, and none is of 2070. */
const firstOfLastCentury = 70
const decades = [1980, 1990, 2000, 2010, 2020, 2030]

/** Letters count on from the first, the skipped ones left out: A 2004, H 2011, J 2012. */
function countLetters(
  shown: string,
  { first, number, skipped }: Extract<Meaning, { kind: 'letters' }>,
): number[] {
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].filter(letter => !skipped.includes(letter))
  const steps = letters.indexOf(shown) - letters.indexOf(first)
  return letters.includes(shown) && steps >= 0 ? [number + steps] : []
}

function daysOfMonth(year: number, month: number): DaySpan[] {
  return month >= 1 && month <= 12 ? [daysOf(`${year}-${month}`)] : []
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
