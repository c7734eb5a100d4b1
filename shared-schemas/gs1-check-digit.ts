/**
 * Whether the last digit checks the ones before it, as in every GTIN, SSCC and GLN: from the right, 1 and 3 by turns, and
 * the sum is a multiple of ten (GS1 General Specifications, 7.9.1).
 */
export function hasGs1CheckDigit(digits: string): boolean {
  if (!/^\d{2,}$/.test(digits)) return false
  const sum = [...digits]
    .reverse()
    .reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0)
  return sum % 10 === 0
}

/** The digit that checks these. */
export function gs1CheckDigit(digits: string): string {
  const found = [...'0123456789'].find(digit => hasGs1CheckDigit(`${digits}${digit}`))
  if (found === undefined) throw new Error(`only digits have a check digit, but given was ${digits}`)
  return found
}
