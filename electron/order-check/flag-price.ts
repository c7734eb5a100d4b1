import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { delivers, offersOf } from './flag-offers.ts'
import { flag } from './flag-table.ts'
import { type LineFacts, type PaidPrice, piecesOf } from './line-facts.ts'

/** A price more than a third away from the last one paid, either way: a slip in a list, or the wrong part. */
export function flagPrice(facts: LineFacts, supplier: string | undefined): OrderFlag[] {
  const { part, lastPaid } = facts
  const pieces = piecesOf(facts)
  if (part === undefined || lastPaid === undefined || pieces === undefined) return []
  const [lowest] = offersOf(facts.offers, supplier)
    .filter(offer => offer.currency === lastPaid.currency && delivers(offer, pieces))
    .sort((one, other) => asUnits(one.price) - asUnits(other.price))
  if (lowest === undefined || !isFar(lowest, lastPaid)) return []
  return [
    flag(
      'price-far',
      `${lowest.supplier} asks ${lowest.price} ${lowest.currency} for ${part.partNumber}; the last one paid was ${lastPaid.price}. Ask before ordering.`,
    ),
  ]
}

function isFar(asked: PaidPrice, paid: PaidPrice): boolean {
  return 3 * Math.abs(asUnits(asked.price) - asUnits(paid.price)) > asUnits(paid.price)
}

/** Prices carry up to four decimals; as whole units they are compared without rounding. */
function asUnits(price: string): number {
  return Math.round(Number(price) * 10_000)
}
