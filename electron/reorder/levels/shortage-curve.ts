import { gammaDemand } from '../distributions/continuous-demand.ts'

/** Pieces that may be asked for over some time: the mean, and the variance as a multiple of it, which is above 1. */
export interface SpreadDemand {
  readonly mean: number
  readonly ratio: number
}

/** What a stock of so many pieces leaves short. */
export interface ShortageCurve {
  /** Pieces from one entry to the next. */
  readonly step: number
  /** Pieces short in a review period, on average, by stock on hand and on order after the review: 0, 1, 2 … steps. */
  readonly short: readonly number[]
}

/**
 * Shortage by stock of a periodic review up to a level, with back-orders: what is short at the end of a cycle less what
 * was short at its beginning (as `serviceOfLevel`). Demand is negative binomial, gamma where much is sold. The curve ends
 * where next to nothing is short.
 */
export function shortageByStock(overLeadTime: SpreadDemand, overProtection: SpreadDemand): ShortageCurve {
  const step = Math.max(1, Math.ceil(overProtection.mean / mostWholeSteps))
  const [atEnd, atBeginning] = [overProtection, overLeadTime].map(demand =>
    isLarge(overProtection) ? gammaShortages(demand, step) : wholeShortages(demand, step),
  ) as [() => number, () => number]
  const least = smallestShare * (overProtection.mean - overLeadTime.mean)
  const short: number[] = []
  for (;;) {
    const pieces = Math.max(0, atEnd() - atBeginning())
    short.push(pieces)
    if (pieces <= least || short.length > mostEntries) return { step, short }
  }
}

const mostWholeSteps = 200
const smallestShare = 1e-5
const mostEntries = 20_000

/** The probability of nothing is then too small for a number, and the steps are small beside the mean. */
function isLarge({ mean }: SpreadDemand): boolean {
  return mean > 250
}

/** Expected shortage of a negative binomial demand at 0, 1, 2 … steps: E(X - s - 1)+ = E(X - s)+ - P(X > s). */
function wholeShortages({ mean, ratio }: SpreadDemand, step: number): () => number {
  if (mean <= 0) return () => 0
  const successes = mean / (ratio - 1)
  const fail = 1 - 1 / ratio
  let [stock, probability, cumulative, shortage] = [0, ratio ** -successes, 0, mean]
  const advance = () => {
    cumulative += probability
    shortage = Math.max(0, shortage - Math.max(0, 1 - cumulative))
    probability *= ((successes + stock) / (stock + 1)) * fail
    stock += 1
  }
  let isFirst = true
  return () => {
    if (!isFirst) for (let piece = 0; piece < step; piece++) advance()
    isFirst = false
    return shortage
  }
}

function gammaShortages({ mean, ratio }: SpreadDemand, step: number): () => number {
  if (mean <= 0) return () => 0
  const demand = gammaDemand(mean, mean * ratio)
  let stock = -step
  return () => {
    stock += step
    return Math.max(0, demand.expectedShortage(stock))
  }
}

/** The same where so many pieces are ordered together: after a review the stock is anything from one above the reorder point to a lot above it, each as likely (Hadley and Whitin, Analysis of Inventory Systems, 1963). */
export function averageOverLot({ step, short }: ShortageCurve, lot: number): ShortageCurve {
  const entries = Math.max(1, Math.round(lot / step))
  if (entries === 1) return { step, short }
  let sum = 0
  for (let at = 0; at < entries; at++) sum += short[at] ?? 0
  const averaged = short.map((leaving, at) => {
    const now = sum / entries
    sum += (short[at + entries] ?? 0) - leaving
    return Math.max(0, now)
  })
  return { step, short: averaged }
}
