import { gammaDemand } from '../../electron/reorder/distributions/continuous-demand.ts'
import type { LeadTimeDemand } from '../../electron/reorder/distributions/lead-time-demand.ts'
import {
  compoundPoissonDemand,
  convolvedDemand,
  negativeBinomialDemand,
  poissonDemand,
} from '../../electron/reorder/distributions/whole-demand.ts'
import type { SpreadDemand } from '../../electron/reorder/levels/shortage-curve.ts'

/** Demand over some months: what is expected of it, and what came so far month by month. */
export interface Expectation extends SpreadDemand {
  readonly months: number
  readonly series: readonly number[]
}

/**
 * The distributions that are compared, each of the expected mean and, as far as it has one, of the expected variance. The
 * bootstrap draws the part's own months of the last two years, every draw there is at once.
 */
export const distributions: Readonly<Record<string, (expected: Expectation) => LeadTimeDemand>> = {
  Poisson: ({ mean }) => poissonDemand(mean),
  gamma: ({ mean, ratio }) => gammaDemand(mean, mean * ratio),
  'negative binomial': ({ mean, ratio }) => negativeBinomialDemand(mean, mean * ratio),
  'compound Poisson of geometric sizes': ({ mean, ratio }) => {
    const meanSize = (ratio + 1) / 2
    return compoundPoissonDemand(mean / meanSize, geometricSizes(meanSize))
  },
  'compound Poisson of its own sizes': ({ mean, series }) => {
    const sizes = shares(series.filter(pieces => pieces > 0))
    return compoundPoissonDemand(mean / meanOf(sizes), sizes)
  },
  bootstrap: ({ series, months }) => {
    const drawn = shares(series.slice(-24))
    const pieces = Array.from({ length: Math.max(...drawn.keys()) + 1 }, (_, at) => at)
    return convolvedDemand(
      pieces.map(at => drawn.get(at) ?? 0),
      months,
    )
  },
}

/** Sizes from 1 on, each less probable than the last by the same factor, until they no longer matter. */
function geometricSizes(meanSize: number): ReadonlyMap<number, number> {
  const chance = 1 / meanSize
  return new Map(Array.from({ length: 100 }, (_, at) => [at + 1, chance * (1 - chance) ** at]))
}

function shares(values: readonly number[]): ReadonlyMap<number, number> {
  const found = new Map<number, number>()
  for (const value of values) found.set(value, (found.get(value) ?? 0) + 1 / values.length)
  return found
}

function meanOf(sizes: ReadonlyMap<number, number>): number {
  return [...sizes].reduce((sum, [size, probability]) => sum + size * probability, 0)
}
