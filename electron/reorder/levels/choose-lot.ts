import { type PriceBreak, quantityUnderBreaks, roundToPacks } from './order-quantity.ts'

/** How a part is bought: by which packs, how many at least, at which prices; the first price is that of the fewest pieces. */
export interface LotTerms {
  readonly pack: number
  readonly minimum: number
  readonly breaks: readonly PriceBreak[]
}

export interface LotCosts {
  /** What one order line costs; null asks for no more than is needed. */
  readonly perLine: number | null
  /** Share of a piece's price that keeping it for a year costs. */
  readonly holdingRate: number
}

/**
 * Pieces of a part that are ordered together: the fewest that can be bought, or what is economical where a line has a
 * cost, in packs; but no more than is used in a year. `yearly` is pieces used in the last year.
 */
export function chooseLot(
  { pack, minimum, breaks }: LotTerms,
  { perLine, holdingRate }: LotCosts,
  yearly: number,
): number {
  const fewest = roundToPacks(1, { minimum, pack })
  if (perLine === null || perLine <= 0 || yearly <= 0 || breaks.every(({ price }) => price <= 0))
    return fewest
  const { quantity } = quantityUnderBreaks({ perOrder: perLine, holdingRate, yearly }, breaks)
  return Math.max(fewest, roundToPacks(Math.min(quantity, yearly), { minimum, pack }))
}
