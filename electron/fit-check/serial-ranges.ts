import { compareSerials, isAllDigits } from '../catalogue/compare-serials.ts'
import { normaliseNumber } from '../catalogue/normalise-number.ts'

/** An inclusive range of serial numbers as the catalogue prints it; a missing end is open. */
export interface SerialRange {
  readonly from: string | null
  readonly to: string | null
}

/** Whether a serial lies in a range; undefined when the two are not of one form and so have no order. */
export function isInSerialRange(serial: string, { from, to }: SerialRange): boolean | undefined {
  const afterStart = from === null ? 0 : compareSerials(serial, from)
  const beforeEnd = to === null ? 0 : compareSerials(to, serial)
  if (afterStart === undefined || beforeEnd === undefined) return undefined
  return afterStart >= 0 && beforeEnd >= 0
}

/** One way in which a serial may stand to all the ranges at once. */
export interface SerialClass {
  /** A serial that shows it, or null for one outside every range. */
  readonly example: string | null
  /** For each range in turn, whether such a serial lies in it. */
  readonly inRange: readonly boolean[]
}

/**
 * The ways in which an unknown serial may stand to the ranges: membership changes only at an end of a range, so the
 * ends, and the nearest number outside each end, show every one of them. Outside them all is always possible.
 */
export function classifySerials(ranges: readonly SerialRange[]): SerialClass[] {
  const ends = ranges.flatMap(({ from, to }) => [
    from,
    to,
    from && stepSerial(from, -1n),
    to && stepSerial(to, 1n),
  ])
  const examples = [...new Set(ends.filter(end => end !== null))].sort((a, b) => compareSerials(a, b) ?? 0)
  const classes = new Map<string, SerialClass>()
  for (const example of examples) {
    const inRange = ranges.map(range => isInSerialRange(example, range) ?? false)
    const name = inRange.map(Number).join('')
    if (!classes.has(name)) classes.set(name, { example, inRange })
  }
  const outside = ranges.map(() => false)
  const outsideName = outside.map(Number).join('')
  classes.delete(outsideName)
  return [...classes.values(), { example: null, inRange: outside }]
}

/** The next or former serial where serials are plain digits; others have none that is sure. */
function stepSerial(serial: string, step: 1n | -1n): string | null {
  const key = normaliseNumber(serial)
  if (!isAllDigits(key)) return null
  const next = BigInt(key) + step
  return next < 0n ? null : next.toString().padStart(key.length, '0')
}
