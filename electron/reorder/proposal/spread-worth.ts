import { Big } from 'big.js'
import { unitNormalLoss } from '../distributions/normal.ts'

/** Demand over the lead time and the review together, in pieces. */
export interface DemandAhead {
  readonly mean: number
  readonly deviation: number
}

/**
 * Expected pieces that are asked for and not there before a later order could bring them, by what is available now (normal
 * loss; Silver, Pyke and Thomas). What is promised beyond the stock counts whole.
 */
export function shortWith(available: number, { mean, deviation }: DemandAhead): number {
  if (deviation <= 0) return Math.max(0, mean - available)
  return deviation * unitNormalLoss((available - mean) / deviation)
}

/** What ordering so many pieces now is worth: the pieces that will not be short for it, at their price. */
export function worthOf(
  ahead: DemandAhead,
  {
    available,
    pieces,
    price,
  }: { readonly available: number; readonly pieces: number; readonly price: string },
): string {
  const saved = Math.max(0, shortWith(available, ahead) - shortWith(available + pieces, ahead))
  return new Big(price).times(saved.toFixed(6)).toFixed(4)
}

/**
 * What a piece beyond the need is worth: its price less what keeping it costs until its turn comes. Nothing where that is
 * more than a year away, or never.
 */
export function extraWorthOf({
  price,
  yearly,
  before,
  holdingRate,
}: {
  readonly price: string
  /** Pieces asked for in a year. */
  readonly yearly: number
  /** Pieces that are used before it. */
  readonly before: number
  /** What keeping a piece for a year costs, as a share of its price. */
  readonly holdingRate: number
}): string {
  const years = yearly > 0 ? before / yearly : Number.POSITIVE_INFINITY
  if (years > 1) return '0'
  return new Big(price)
    .times((1 - Math.min(1, holdingRate * years)).toFixed(6))
    .round(4, Big.roundDown)
    .toFixed()
}
