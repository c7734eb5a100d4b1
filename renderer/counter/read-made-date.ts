import { partialDate } from '../../shared-schemas/plate-reading.ts'

/** A date of making as plates print it (`06/2014`, `2014.6`, `2014-06-17`) in the order of ISO 8601; undefined if it is none. */
export function readMadeDate(typed: string): string | undefined {
  const parts = typed.trim().split(/\s*[-/.\s]\s*/)
  const yearFirst = parts[0]?.length === 4 ? parts : parts.toReversed()
  const [year = '', ...rest] = yearFirst
  if (year.length !== 4 || parts.length > 3) return undefined
  const date = [year, ...rest.map(part => part.padStart(2, '0'))].join('-')
  return partialDate.safeParse(date).success ? date : undefined
}
