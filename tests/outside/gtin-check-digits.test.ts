import { describe, expect, test } from 'vitest'
import { findGtinFault, gtinCheckDigit } from '../../electron/catalogue/check-gtin.ts'

/**
 * The check digit of the GS1 General Specifications, section 7.9. The first number is the worked example of GS1's page
 * on how to calculate a check digit (6 2 9 1 0 4 1 5 0 0 2 1, check digit 3); the next two stand as examples on pages
 * of GS1 Sweden and GS1 India. The others are quoted from memory.
 */
const published: readonly (readonly [number: string, from: string])[] = [
  ['6291041500213', 'GS1, how to calculate a check digit'],
  ['7300011000017', 'GS1 Sweden'],
  ['8904000210037', 'GS1 India'],
  ['9506000134352', 'GS1 example prefix, from memory'],
  ['96385074', 'a GTIN-8, from memory'],
  ['036000291452', 'a GTIN-12, from memory'],
  ['614141000036', 'a GTIN-12 of GS1 US, from memory'],
  ['10614141000415', 'a GTIN-14, from memory'],
]

describe('a published number carries the check digit that we compute', () => {
  const check = (number: string) => {
    expect(gtinCheckDigit(number.slice(0, -1))).toBe(Number(number.slice(-1)))
    expect(findGtinFault(number)).toBeUndefined()
  }
  test.each(published)('%s (%s)', check)
})

test('an SSCC of 18 digits follows the same rule, and is still no GTIN', () => {
  // From memory; the rule of section 7.9 holds for every GS1 key that is all digits.
  expect(gtinCheckDigit('10614141234567890')).toBe(8)
  expect(findGtinFault('106141412345678908')).toContain('8, 12, 13 or 14 digits')
})

test('one mistyped digit is always found, since 1 and 3 have no factor in common with 10', () => {
  for (const [number] of published)
    for (let at = 0; at < number.length; at += 1)
      for (const digit of '0123456789') {
        const mistyped = number.slice(0, at) + digit + number.slice(at + 1)
        if (mistyped !== number) expect(findGtinFault(mistyped), mistyped).toContain('mistyped')
      }
})

test('two neighbours that change places are found unless they differ by 5, which no weights 1 and 3 can tell', () => {
  for (const [number] of published)
    for (let at = 0; at + 1 < number.length; at += 1) {
      const [left, right] = [Number(number[at]), Number(number[at + 1])]
      const swapped = number.slice(0, at) + right + left + number.slice(at + 2)
      const isFound = findGtinFault(swapped) !== undefined
      expect(isFound, swapped).toBe(left !== right && Math.abs(left - right) !== 5)
    }
})
