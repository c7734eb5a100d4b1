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
  readonly levelsAt: (period: number) => ReviewLevels
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
 * Plays periods `from` to `to` (not with it) as they went, reviewing before each: where on hand and on order together are
 * at the reorder point or below it, the part is ordered up to its level. What is not there is owed and given when it comes.
 */
export function simulateReview(
  { demand, leadPeriods, onHand, levelsAt }: ReviewedPart,
  { from, to }: { readonly from: number; readonly to: number },
  outcome: ReviewOutcome,
): void {
  const coming: number[] = Array.from({ length: leadPeriods }, () => 0)
  let [there, position] = [onHand, onHand]
  for (let period = from; period < to; period++) {
    const { reorderPoint, orderUpTo } = levelsAt(period)
    const order = position <= reorderPoint ? Math.max(0, orderUpTo - position) : 0
    if (order > 0) {
      outcome.orders += 1
      outcome.ordered += order
    }
    coming.push(order)
    there += coming.shift() ?? 0
    const asked = demand[period] ?? 0
    outcome.asked += asked
    outcome.given += Math.min(Math.max(0, there), asked)
    there -= asked
    position += order - asked
    outcome.stock += Math.max(0, there)
  }
}
