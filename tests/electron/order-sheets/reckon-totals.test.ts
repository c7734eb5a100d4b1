import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  reckonAmount,
  reckonCarriage,
  reckonShortfall,
  reckonTotals,
} from '../../../electron/order-sheets/reckon-totals.ts'

test.each([
  ['half a coin goes up', { quantity: 3, unitPrice: '0.335' }, 'GBP', '1.01'],
  ['less than half goes down', { quantity: 1, unitPrice: '0.3349' }, 'GBP', '0.33'],
  ['as no binary fraction would have it', { quantity: 1, unitPrice: '1.005' }, 'EUR', '1.01'],
  ['a currency without small coins', { quantity: 3, unitPrice: '10.5' }, 'JPY', '32'],
  ['a currency of a thousand coins', { quantity: 1, unitPrice: '0.0005' }, 'KWD', '0.001'],
])('an amount: %s', (_title, line, currency, expected) => {
  // Digits after the point: ISO 4217, GBP and EUR 2, JPY 0, KWD 3.
  expect(reckonAmount(line, currency)).toBe(expected)
})

test.each([
  ['below', '119.99', '5.95'],
  ['at', '120.00', '0'],
])('carriage %s the value from which it is paid', (_title, net, expected) => {
  expect(reckonCarriage(net, { carriage: '5.95', carriagePaidFrom: '120' })).toBe(expected)
})

test('carriage that is never paid, and a supplier who asks for none', () => {
  expect(reckonCarriage('9999', { carriage: '5.95', carriagePaidFrom: null })).toBe('5.95')
  expect(reckonCarriage('1', { carriage: null, carriagePaidFrom: null })).toBe('0')
})

test('the shortfall is what is missing, and none at the minimum itself', () => {
  expect(reckonShortfall('20.01', '25', 'GBP')).toBe('4.99')
  expect(reckonShortfall('25.00', '25', 'GBP')).toBeNull()
  expect(reckonShortfall('0.00', null, 'GBP')).toBeNull()
})

/** Reckoned in whole pennies with integers, which has no rounding to differ in. */
test('whatever the lines, the sheet adds up to the penny', () => {
  const price = fc
    .tuple(fc.nat(9_999), fc.nat(9_999))
    .map(([whole, parts]) => `${whole}.${String(parts).padStart(4, '0')}`)
  const line = fc.record({ quantity: fc.integer({ min: 1, max: 999_999 }), unitPrice: price })
  const inPennies = (amount: string) => BigInt(amount.replace('.', ''))
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 30 }), fc.nat(99_999), (lines, carriage) => {
      const totals = reckonTotals(lines, {
        carriage: `${Math.floor(carriage / 100)}.${String(carriage % 100).padStart(2, '0')}`,
        currency: 'GBP',
      })
      const expected = lines.reduce(
        (sum, { quantity, unitPrice }) => sum + (BigInt(quantity) * inPennies(unitPrice) + 50n) / 100n,
        0n,
      )
      expect(inPennies(totals.net)).toBe(expected)
      expect(inPennies(totals.total)).toBe(expected + BigInt(carriage))
    }),
    { numRuns: 500 },
  )
})
