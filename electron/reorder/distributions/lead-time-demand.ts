/** How much may be asked for while a delivery is awaited, and what follows for a stock of so many pieces. */
export interface LeadTimeDemand {
  /** Pieces. */
  readonly mean: number
  /** The probability that no more than `pieces` are asked for. */
  readonly cumulative: (pieces: number) => number
  /** Pieces that are asked for beyond `stock`, on average. */
  readonly expectedShortage: (stock: number) => number
}

/** The least whole stock with which everything is there with at least this probability (cycle service level). */
export function stockForCycleService({ cumulative, mean }: LeadTimeDemand, target: number): number {
  let stock = 0
  while (cumulative(stock) < target) {
    stock += 1
    if (stock > mostPieces)
      throw new Error(`no stock up to ${mostPieces} reaches ${target} with mean ${mean}`)
  }
  return stock
}

const mostPieces = 1_000_000
