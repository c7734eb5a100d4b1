import { expect, test } from 'vitest'
import {
  noOutcome,
  type PlayedPeriods,
  type ReviewedPart,
  type ReviewOutcome,
  simulateReview,
} from '../../../../electron/reorder/back-test/simulate-review.ts'

type Given = Partial<Omit<ReviewedPart, 'levelsAt'> & PlayedPeriods> & {
  readonly demand: readonly number[]
  readonly levels?: readonly [reorderPoint: number, orderUpTo: number]
}

/** Each case was played by hand. */
function check(
  { demand, levels: [reorderPoint, orderUpTo] = [1, 2], ...rest }: Given,
  expected: Partial<ReviewOutcome>,
) {
  const outcome = noOutcome()
  const part = { onHand: orderUpTo, leadPeriods: 0, ...rest, demand }
  simulateReview(
    { ...part, levelsAt: () => ({ reorderPoint, orderUpTo }) },
    { from: 0, to: demand.length, ...rest },
    outcome,
  )
  expect(outcome).toMatchObject(expected)
}

test('what is there is given, and ordered again at the next review', () =>
  check({ demand: [1, 0, 2, 0] }, { asked: 3, given: 3, orders: 2, ordered: 3, stock: 1 + 2 + 0 + 2 }))

test('what is on its way is not ordered again, and what is short is owed until it comes', () =>
  check(
    { demand: [2, 1, 0, 0, 1], leadPeriods: 2 },
    { asked: 4, given: 3, orders: 2, ordered: 3, stock: 0 + 0 + 0 + 1 + 1 },
  ))

test('between the reorder point and the level nothing is ordered', () =>
  check({ demand: [1, 1, 1, 0], levels: [1, 4] }, { given: 3, orders: 1, ordered: 3, stock: 3 + 2 + 1 + 4 }))

test('a review every other period orders only then', () =>
  check({ demand: [1, 1, 0, 0], reviewEvery: 2 }, { given: 2, orders: 1, ordered: 2, stock: 1 + 0 + 2 + 2 }))

test('in lots, the fewest that bring it above the reorder point are ordered', () =>
  check({ demand: [4, 0], levels: [1, 5], lot: 3 }, { given: 4, orders: 1, ordered: 3, stock: 1 + 4 }))

test('what is not kept is ordered once somebody waits for it', () =>
  check({ demand: [1, 0, 0], levels: [0, 0] }, { asked: 1, given: 0, orders: 1, ordered: 1, stock: 0 }))

test('a period of which nothing is known is played as one in which nobody asked', () =>
  check({ demand: [-1, 1] }, { asked: 1, given: 1 }))
