import gammaCumulative from '@stdlib/stats-base-dists-gamma-cdf'
import gammaQuantile from '@stdlib/stats-base-dists-gamma-quantile'
import type { LeadTimeDemand } from './lead-time-demand.ts'
import { normalCumulative, unitNormalLoss } from './normal.ts'

/** Normal demand; for parts that sell often. The standard deviation is above 0. */
export function normalDemand(mean: number, deviation: number): LeadTimeDemand {
  return {
    mean,
    cumulative: pieces => normalCumulative((pieces - mean) / deviation),
    expectedShortage: stock => deviation * unitNormalLoss((stock - mean) / deviation),
  }
}

/** Gamma demand by its moments, both above 0. Its loss is E X (1 - F(S; k + 1)) - S (1 - F(S; k)). */
export function gammaDemand(
  mean: number,
  variance: number,
): LeadTimeDemand & { readonly quantile: (p: number) => number } {
  const [shape, rate] = [(mean * mean) / variance, mean / variance]
  return {
    mean,
    quantile: p => gammaQuantile(p, shape, rate),
    cumulative: pieces => gammaCumulative(pieces, shape, rate),
    expectedShortage: stock =>
      stock <= 0
        ? mean - stock
        : mean * (1 - gammaCumulative(stock, shape + 1, rate)) -
          stock * (1 - gammaCumulative(stock, shape, rate)),
  }
}
