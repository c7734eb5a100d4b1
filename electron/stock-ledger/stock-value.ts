import { Big } from 'big.js'

/** What happened to all pieces of one part together, in order: a piece that only changes its place is not named. */
export interface CostEvent {
  /** Above 0 what came into the shop, below 0 what left it. */
  readonly quantity: number
  /** What was paid for one piece, as a decimal; null where that is not known. */
  readonly unitCost: string | null
}

export interface PartCost {
  /** Null until something was paid. */
  readonly last: Big | null
  readonly average: Big | null
}

/**
 * The last cost and the moving average of one part. Each receipt at a known cost makes the average anew: value held plus
 * value received, over pieces held plus pieces received; what leaves goes at the average and does not change it (moving
 * weighted average, the perpetual form of the cost formula in IAS 2.27). Pieces that came at no known cost come at the
 * average. Where fewer than none are held, the average begins again with the receipt.
 */
export function reckonCost(events: Iterable<CostEvent>): PartCost {
  let [held, last, average] = [0, null as Big | null, null as Big | null]
  for (const { quantity, unitCost } of events) {
    if (quantity > 0 && unitCost !== null) {
      const cost = new Big(unitCost)
      const before = Math.max(0, held)
      average =
        average === null
          ? cost
          : average
              .times(before)
              .plus(cost.times(quantity))
              .div(before + quantity)
      last = cost
    }
    held += quantity
  }
  return { last, average }
}

/** Rounded half up to the cent, as on an invoice. */
export function wordAmount(amount: Big): string {
  return amount.toFixed(2, Big.roundHalfUp)
}
