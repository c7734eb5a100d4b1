import { type LeadTimeDemand, stockForCycleService } from '../distributions/lead-time-demand.ts'

/** Both measures of service of a periodic review up to a level, since one is no substitute for the other. */
export interface Service {
  /** Share of the pieces asked for that are there, 0 to 1. */
  readonly fillRate: number
  /** Probability that nothing is short in a period, 0 to 1. */
  readonly cycleService: number
}

/** The demand over the lead time and over lead time and review together, which a periodic review must cover. */
export interface ProtectedDemand {
  readonly overLeadTime: LeadTimeDemand
  readonly overProtection: LeadTimeDemand
}

/**
 * Service of ordering up to a level at every review, with back-orders: what is short at the end of a cycle, less what
 * was short at its beginning already, over what is asked for in it (Silver, Pyke and Thomas; Teunter 2009).
 */
export function serviceOfLevel({ overLeadTime, overProtection }: ProtectedDemand, level: number): Service {
  const perCycle = overProtection.mean - overLeadTime.mean
  const short = overProtection.expectedShortage(level) - overLeadTime.expectedShortage(level)
  return {
    fillRate: perCycle <= 0 ? 1 : Math.min(1, Math.max(0, 1 - short / perCycle)),
    cycleService: overProtection.cumulative(level),
  }
}

/** The least whole order-up-to level whose fill rate is at least `target`, which is between 0 and 1. */
export function levelForFillRate(demand: ProtectedDemand, target: number): number {
  let [low, high] = [0, Math.max(1, stockForCycleService(demand.overProtection, 0.999_999))]
  while (low < high) {
    const middle = Math.floor((low + high) / 2)
    if (serviceOfLevel(demand, middle).fillRate >= target) high = middle
    else low = middle + 1
  }
  return low
}

/** Fill rate of a continuous review that orders `quantity` at `reorderPoint`, back-orders kept: 1 - E(X - s)+ / Q, with what is short before the order too. */
export function fillRateOfReorderPoint(
  demand: LeadTimeDemand,
  { reorderPoint, quantity }: { readonly reorderPoint: number; readonly quantity: number },
): number {
  return 1 - demand.expectedShortage(reorderPoint) / quantity
}
