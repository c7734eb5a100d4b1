import { normaliseNumber } from './normalise-number.ts'

/**
 * Below zero, zero or above zero, or undefined when the two serials are not of one form and so have no order. All digits
 * compare as numbers, others character by character and only at equal length: makers count within one form.
 */
export function compareSerials(one: string, other: string): number | undefined {
  const [a, b] = [normaliseNumber(one), normaliseNumber(other)]
  if (isAllDigits(a) && isAllDigits(b)) return compareDigits(a, b)
  if (formOf(a) !== formOf(b)) return undefined
  return a < b ? -1 : a > b ? 1 : 0
}

/** As many digits as a serial has, whatever they are: numbers of any length, without rounding. */
function compareDigits(one: string, other: string): number {
  const [a, b] = [BigInt(one), BigInt(other)]
  return a < b ? -1 : a > b ? 1 : 0
}

export function isAllDigits(serial: string): boolean {
  return /^\d+$/.test(serial)
}

/** `A1234` has the form `LDDDD`. */
function formOf(serial: string): string {
  return [...serial].map(character => (/\d/.test(character) ? 'D' : 'L')).join('')
}
