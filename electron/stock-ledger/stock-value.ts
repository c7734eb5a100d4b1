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
  let [held, last, average] = [0n, null as bigint | null, null as bigint | null]
  for (const { quantity, unitCost } of events) {
    const pieces = BigInt(quantity)
    if (quantity > 0 && unitCost !== null) {
      last = asUnits(unitCost)
      const before = held > 0n ? held : 0n
      average = average === null ? last : divideToNearest(average * before + last * pieces, before + pieces)
    }
    held += pieces
  }
  return { last: asAmount(last), average: asAmount(average) }
}

/** Whole numbers of a millionth of a millionth, since a book has a million receipts and decimals of any length are slow. */
const decimals = 12

function asUnits(amount: string): bigint {
  const [whole = '0', fraction = ''] = amount.split('.')
  return BigInt(whole + fraction.padEnd(decimals, '0'))
}

/** For amounts above 0. */
function divideToNearest(value: bigint, by: bigint): bigint {
  return (value + by / 2n) / by
}

function asAmount(units: bigint | null): Big | null {
  return units === null ? null : new Big(String(units)).div(new Big(10).pow(decimals))
}

/** Rounded half up to the cent, as on an invoice. */
export function wordAmount(amount: Big): string {
  return amount.toFixed(2, Big.roundHalfUp)
}
