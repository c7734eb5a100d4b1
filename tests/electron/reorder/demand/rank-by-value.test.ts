import { expect, test } from 'vitest'
import { rankByValue } from '../../../../electron/reorder/demand/rank-by-value.ts'

function check(uses: readonly (readonly [pieces: number, price: string])[], expected: readonly string[]) {
  const ranked = rankByValue(uses.map(([pieces, price], partId) => ({ partId, pieces, price })))
  expect(uses.map((_, partId) => ranked.get(partId) ?? '')).toEqual(expected)
}

test('value is pieces times price, and small cheap things come last', () =>
  check(
    [
      [6, '1.00'],
      [10, '7.50'],
      [1, '15.00'],
      [100, '0.04'],
    ],
    ['C', 'A', 'B', 'C'],
  ))

test('the first is A even where it is nearly all', () =>
  check(
    [
      [1, '1.00'],
      [100, '9.00'],
    ],
    ['C', 'A'],
  ))

test('what was not used, or costs nothing, has no rank', () =>
  check(
    [
      [0, '9.00'],
      [3, '0'],
      [1, '2.00'],
    ],
    ['', '', 'A'],
  ))
