import type { z } from 'zod'
import { normaliseNumber } from '../normalise-number.ts'
import { isDateRangeInverted } from './partial-date.ts'

interface Ranges {
  readonly made_from: string | null
  readonly made_to: string | null
  readonly serial_from?: string | null
  readonly serial_to?: string | null
}

/** A range that ends before it begins holds nothing, and was meant otherwise. */
export function checkRanges(ranges: Ranges, context: z.RefinementCtx): void {
  const { made_from, made_to, serial_from = null, serial_to = null } = ranges
  if (isDateRangeInverted(made_from, made_to)) inverted('made_to', made_from, made_to, context)
  if (isSerialRangeInverted(serial_from, serial_to)) inverted('serial_to', serial_from, serial_to, context)
}

function inverted(column: string, from: string | null, to: string | null, context: z.RefinementCtx): void {
  const message = `${to} is before ${from}, with which the range begins: swap the two, or mend one`
  context.addIssue({ code: 'custom', path: [column], message })
}

/** Serials all of digits compare as numbers, others only at one length; two of different forms have no order. */
function isSerialRangeInverted(from: string | null, to: string | null): boolean {
  if (from === null || to === null) return false
  const [first, last] = [normaliseNumber(from), normaliseNumber(to)]
  if (/^\d+$/.test(first) && /^\d+$/.test(last)) return BigInt(first) > BigInt(last)
  return first.length === last.length && first > last
}
