import type { z } from 'zod'
import { compareSerials } from '../compare-serials.ts'
import { isDateRangeInverted } from './partial-date.ts'

interface Ranges {
  readonly made_from: string | null
  readonly made_to: string | null
  readonly serial_from?: string | null
  readonly serial_to?: string | null
}

/** A range that ends before it begins holds nothing, and one whose ends have no order holds nothing for certain. */
export function checkRanges(ranges: Ranges, context: z.RefinementCtx): void {
  const { made_from, made_to, serial_from = null, serial_to = null } = ranges
  if (isDateRangeInverted(made_from, made_to)) refuse('made_to', inverted(made_from, made_to), context)
  if (serial_from === null || serial_to === null) return
  const order = compareSerials(serial_from, serial_to)
  if (order === undefined) refuse('serial_to', withoutOrder(serial_from, serial_to), context)
  else if (order > 0) refuse('serial_to', inverted(serial_from, serial_to), context)
}

function refuse(column: string, message: string, context: z.RefinementCtx): void {
  context.addIssue({ code: 'custom', path: [column], message })
}

function inverted(from: string | null, to: string | null): string {
  return `${to} is before ${from}, with which the range begins: swap the two, or mend one`
}

function withoutOrder(from: string, to: string): string {
  return `${to} is not of the form of ${from}, so nobody can say what lies between: write both ends in one form`
}
