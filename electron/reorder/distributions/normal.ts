import cumulativeOf from '@stdlib/stats-base-dists-normal-cdf'
import quantileOf from '@stdlib/stats-base-dists-normal-quantile'

/** Standard normal density at z. */
export function normalDensity(z: number): number {
  return Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI)
}

/** Standard normal distribution function at z. */
export function normalCumulative(z: number): number {
  return cumulativeOf(z, 0, 1)
}

/** The z below which the standard normal lies with probability p; p between 0 and 1. */
export function normalQuantile(p: number): number {
  return quantileOf(p, 0, 1)
}

/**
 * Unit normal loss: the expected pieces short beyond z, G(z) = phi(z) - z (1 - Phi(z)) (Silver, Pyke and Thomas, Inventory
 * and Production Management in Supply Chains, appendix II). Far to the right it is taken as 0.
 */
export function unitNormalLoss(z: number): number {
  return Math.max(0, normalDensity(z) - z * normalCumulative(-z))
}

/** The z whose unit normal loss is `loss`, above 0, by halving: the loss only falls. */
export function inverseUnitNormalLoss(loss: number): number {
  let [low, high] = [-Math.max(10, loss + 1), 40]
  for (let step = 0; step < 200 && high - low > 1e-12; step++) {
    const middle = (low + high) / 2
    if (unitNormalLoss(middle) > loss) low = middle
    else high = middle
  }
  return (low + high) / 2
}
