import { expect, test } from 'vitest'
import { chooseLot } from '../../../../electron/reorder/levels/choose-lot.ts'

const single = { pack: 1, minimum: 1, breaks: [{ from: 1, price: 10 }] }
const costs = { perLine: 5, holdingRate: 0.25 }

test('without a cost of a line no more is ordered together than must be', () => {
  expect(chooseLot(single, { ...costs, perLine: null }, 500)).toBe(1)
  expect(chooseLot({ ...single, pack: 5, minimum: 8 }, { ...costs, perLine: null }, 500)).toBe(10)
})

// Square root of 2 x 5 x 100 / (0.25 x 10) = 20.
test('with it, what is economical is', () => expect(chooseLot(single, costs, 100)).toBe(20))

test('in packs, and never more than a year’s use', () => {
  expect(chooseLot({ ...single, pack: 6 }, costs, 100)).toBe(24)
  expect(chooseLot(single, costs, 2)).toBe(2)
})

test('a lower price for more pieces draws the lot up to where it begins', () =>
  expect(
    chooseLot(
      {
        ...single,
        breaks: [
          { from: 1, price: 10 },
          { from: 30, price: 8 },
        ],
      },
      costs,
      100,
    ),
  ).toBe(30))

test('what was not used has no economical lot', () => expect(chooseLot(single, costs, 0)).toBe(1))
