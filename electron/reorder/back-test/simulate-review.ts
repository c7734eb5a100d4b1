import { lotsToOrder } from '../levels/order-quantity.ts'

/** The levels that a part has at one review. */
export interface ReviewLevels {
  readonly reorderPoint: number
  readonly orderUpTo: number
}

/** One part through time: what was asked for in each period, and what its levels were at the review before it. */
export interface ReviewedPart {
  readonly demand: ArrayLike<number>
  /** Periods from a review until what it orders can be taken. */
  readonly leadPeriods: number
  readonly onHand: number
  /** Pieces that are ordered together; 1 orders up to the level. */
  readonly lot?: number
  readonly levelsAt: (period: number) => ReviewLevels
}

/** Periods played, from one up to but not with another, with a review before every so many of them. */
export interface PlayedPeriods {
  readonly from: number
  readonly to: number
  readonly reviewEvery?: number
}

/** What came of it, in pieces; a part's results are added to those of others. */
export interface ReviewOutcome {
  asked: number
  /** Of those, what was there when it was asked for. */
  given: number
  /** On hand at the end of each period, added up. */
  stock: number
  /** Orders of a part, and the pieces in them. */
  orders: number
  ordered: number
}

export function noOutcome(): ReviewOutcome {
  return { asked: 0, given: 0, stock: 0, orders: 0, ordered: 0 }
}

/**
 * Plays the periods as they went. At a review where on hand and on order together are at the reorder point or below it, the
 * part is ordered up to its level, or in lots. What is not there is owed and given when it comes.
 */
export function simulateReview(part: ReviewedPart, periods: PlayedPeriods, outcome: ReviewOutcome): void {
  const { demand, leadPeriods, onHand, lot = 1, levelsAt } = part
  const { from, to, reviewEvery = 1 } = periods
  const coming: number[] = Array.from({ length: leadPeriods }, () => 0)
  let [there, position] = [onHand, onHand]
  for (let period = from; period < to; period++) {
    const isReview = (period - from) % reviewEvery === 0
    const order = isReview ? piecesToOrder(position, levelsAt(period), lot) : 0
    if (order > 0) {
      outcome.orders += 1
      outcome.ordered += order
    }
    coming.push(order)
    there += coming.shift() ?? 0
    // A period without stock to ask for is unknown, and played as one in which nobody asked.
    const asked = Math.max(0, demand[period] ?? 0)
    outcome.asked += asked
    outcome.given += Math.min(Math.max(0, there), asked)
    there -= asked
    position += order - asked
    outcome.stock += Math.max(0, there)
  }
}

/** What is not kept is ordered once it is owed. */
function piecesToOrder(position: number, { reorderPoint, orderUpTo }: ReviewLevels, lot: number): number {
  const point = orderUpTo === 0 ? -1 : reorderPoint
  if (position > point) return 0
  return lot === 1 ? orderUpTo - position : lotsToOrder(position, { reorderPoint: point, lot })
}
