import { describe, expect, test } from 'vitest'
import { gs1CheckDigit, hasGs1CheckDigit } from '../../shared-schemas/gs1-check-digit.ts'

// Worked examples that GS1 and its member organisations publish, against our check digits.

test.each([
  ['6291041500213', 'GS1 Hong Kong, check digit calculator, the worked GTIN-13'],
  ['7300011000017', 'GS1 Sweden, “Så beräknas kontrollsiffran”'],
  ['8904000210037', 'GS1 India, “How to calculate the check digit”'],
  ['24012345678905', 'GS1 Barcode Syntax Engine, test_scandata_validateParity, GTIN-14'],
  ['2112233789657', 'the same, GTIN-13'],
  ['416000336108', 'the same, GTIN-12'],
  ['02345680', 'the same, GTIN-8'],
  ['106141412345678908', 'an SSCC of the GS1 US guides, from memory'],
])('%s is right: %s', number => {
  expect(hasGs1CheckDigit(number)).toBe(true)
  expect(gs1CheckDigit(number.slice(0, -1))).toBe(number.slice(-1))
})

test.each([
  ['24012345678909', 'GS1 Barcode Syntax Engine, test_scandata_validateParity, GTIN-14'],
  ['2112233789658', 'the same, GTIN-13'],
  ['416000336107', 'the same, GTIN-12'],
  ['02345689', 'the same, GTIN-8'],
])('%s is wrong: %s', number => {
  expect(hasGs1CheckDigit(number)).toBe(false)
})

describe('what the check digit notices, by its arithmetic (GS1 General Specifications, 7.9)', () => {
  const base = '629104150021'
  test('every single wrong digit', () => {
    for (let at = 0; at < base.length; at++)
      for (const digit of '0123456789') {
        const other = `${base.slice(0, at)}${digit}${base.slice(at + 1)}`
        expect(hasGs1CheckDigit(`${other}3`)).toBe(other === base)
      }
  })

  test('neighbours exchanged, unless they differ by five', () => {
    for (const one of '0123456789')
      for (const other of '0123456789') {
        if (one === other) continue
        const check = gs1CheckDigit(`0000000000${one}${other}`)
        const isMissed = hasGs1CheckDigit(`0000000000${other}${one}${check}`)
        expect(isMissed).toBe(Math.abs(Number(one) - Number(other)) === 5)
      }
  })
})
