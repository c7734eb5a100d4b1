import { inverseUnitNormalLoss, normalQuantile } from '../distributions/normal.ts'

/** Demand by period and lead time in periods, with how much each varies (standard deviations). */
export interface VaryingDemand {
  readonly mean: number
  readonly deviation: number
  readonly leadTime: number
  readonly leadTimeDeviation: number
}

/** Mean and standard deviation of the demand over the lead time: variance L s^2 + m^2 sL^2 (Silver, Pyke and Thomas). */
export function demandOverLeadTime({ mean, deviation, leadTime, leadTimeDeviation }: VaryingDemand) {
  return {
    mean: mean * leadTime,
    deviation: Math.sqrt(leadTime * deviation ** 2 + mean ** 2 * leadTimeDeviation ** 2),
  }
}

/** The stock at which to order so that nothing runs short while waiting, with this probability; normal demand. */
export function reorderPointForCycleService(demand: VaryingDemand, target: number): number {
  const { mean, deviation } = demandOverLeadTime(demand)
  return mean + normalQuantile(target) * deviation
}

/** The stock at which to order `quantity` so that this share of the pieces asked for is there; normal demand. */
export function reorderPointForFillRate(
  { mean, deviation }: { readonly mean: number; readonly deviation: number },
  { quantity, target }: { readonly quantity: number; readonly target: number },
): number {
  return mean + inverseUnitNormalLoss(((1 - target) * quantity) / deviation) * deviation
}
