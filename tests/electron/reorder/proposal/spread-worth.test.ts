import { describe, expect, test } from 'vitest'
import { extraWorthOf, shortWith, worthOf } from '../../../../electron/reorder/proposal/spread-worth.ts'

// Unit normal loss at 0 is 0.3989 and at 1 is 0.0833: Silver, Pyke and Thomas, Inventory and Production Management in
// Supply Chains, appendix II (values from memory of the table; 1 / sqrt(2 pi) and phi(1) - Phi(-1) give the same).
test('pieces expected to be short are the normal loss of what is available', () => {
  expect(shortWith(10, { mean: 10, deviation: 2 })).toBeCloseTo(2 * 0.3989, 3)
  expect(shortWith(12, { mean: 10, deviation: 2 })).toBeCloseTo(2 * 0.0833, 3)
})

test('what is owed is short whole, and demand that never varies is short by what is missing', () => {
  expect(shortWith(-5, { mean: 0.01, deviation: 0.1 })).toBeCloseTo(5.01, 2)
  expect(shortWith(3, { mean: 5, deviation: 0 })).toBe(2)
  expect(shortWith(8, { mean: 5, deviation: 0 })).toBe(0)
})

test('ordering is worth the pieces that are not short for it, at their price', () => {
  const ahead = { mean: 10, deviation: 2 }
  const worth = worthOf(ahead, { available: 10, pieces: 2, price: '5.00' })
  expect(Number(worth)).toBeCloseTo(5 * 2 * (0.3989 - 0.0833), 2)
})

describe('a piece beyond the need', () => {
  function check(given: { yearly: number; before: number }, expected: string): void {
    expect(extraWorthOf({ price: '10.00', holdingRate: 0.25, ...given })).toBe(expected)
  }
  test.each<[string, { yearly: number; before: number }, string]>([
    ['used in half a year is worth its price less half a year of keeping', { yearly: 12, before: 6 }, '8.75'],
    ['used at once is worth its price', { yearly: 12, before: 0 }, '10'],
    ['used after more than a year is worth nothing', { yearly: 12, before: 13 }, '0'],
    ['never used is worth nothing', { yearly: 0, before: 0 }, '0'],
  ])('%s', (_fact, given, expected) => check(given, expected))
})
