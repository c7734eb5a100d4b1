/** What a supplier asks besides the price of the goods; null where it asks nothing of the kind. Money as exact decimals. */
export interface SupplierTerms {
  readonly supplier: string
  readonly carriage: string | null
  /** Goods of this value or more are sent without carriage. */
  readonly carriagePaidFrom: string | null
  /** Goods below this value are not sent at all. */
  readonly minimumOrder: string | null
}

/** A price for every piece when at least `from` pieces are ordered, in whole packs and at least the minimum. */
export interface PriceRow {
  readonly from: number
  readonly price: string
  readonly pack: number
  readonly minimum: number
}

/** One supplier's offer of something that answers a line. */
export interface LineOffer {
  /** What the caller knows the offer by: which part it is and the supplier's code for it. */
  readonly offerId: string
  readonly supplier: string
  /** In the order of `from`, each of which comes once. */
  readonly rows: readonly PriceRow[]
}

export interface WantedLine {
  readonly lineId: string
  /** Pieces that must come, at least one. */
  readonly need: number
  /** Pieces beyond which no more are taken just to reach a price or a threshold; what a pack makes of the need is taken. */
  readonly most: number
  /**
   * The most that having this line now may cost beyond its lowest price: a dearer supplier, carriage, what fills up a
   * minimum order. When the budget does not suffice, the lines worth least for their money are left for later.
   */
  readonly worth: string
  /** What a piece beyond the need is worth, because it need not be bought later. */
  readonly extraWorth: string
  readonly offers: readonly LineOffer[]
}

/** What is to be ordered and from whom it can be had, all of it in one currency. */
export interface OrderProblem {
  readonly suppliers: readonly SupplierTerms[]
  readonly lines: readonly WantedLine[]
  /** The most that all orders together may cost, carriage included; null where there is no limit. */
  readonly budget: string | null
}
