import { expect, test } from 'vitest'
import { planOpeningMovement } from '../../../electron/stock-ledger/record-opening-stock.ts'

/** What is stated before and now, and the movement that it asks for: `+5 receipt` into the place, `-3 …` out of it. */
function check({ before, now }: { before: number | null; now: number }, expected: string) {
  const movement = planOpeningMovement({ partId: 1, locationId: 2, before, now })
  if (movement === undefined) return expect('none').toBe(expected)
  expect([movement.fromLocationId, movement.toLocationId].filter(place => place !== null)).toEqual([2])
  const sign = movement.toLocationId === 2 ? '+' : '-'
  return expect(`${sign}${movement.quantity} ${movement.kind}`).toBe(expected)
}

test.each([
  ['the first statement is received', { before: null, now: 5 }, '+5 receipt'],
  ['a first statement of none moves nothing', { before: null, now: 0 }, 'none'],
  ['the same again moves nothing', { before: 5, now: 5 }, 'none'],
  ['more than before is adjusted upwards', { before: 5, now: 7 }, '+2 adjustment'],
  ['less than before is adjusted downwards', { before: 5, now: 2 }, '-3 adjustment'],
  ['none where there was some', { before: 5, now: 0 }, '-5 adjustment'],
  ['some where none was stated', { before: 0, now: 4 }, '+4 adjustment'],
] as const)('%s', (_title, given, expected) => check(given, expected))
