import type { LeadTimeDemand } from './lead-time-demand.ts'

/** Demand in whole pieces whose probabilities come one after the other, from none on. */
export function wholeDemand(mean: number, probabilities: () => Iterator<number>): LeadTimeDemand {
  const source = probabilities()
  const cumulative: number[] = []
  /** By stock: the pieces up to it, weighted by how probable they are. */
  const partial: number[] = []
  const fill = (pieces: number) => {
    while (cumulative.length <= pieces) {
      const at = cumulative.length
      const next = source.next()
      const probability = next.done ? 0 : next.value
      cumulative.push(Math.min(1, (cumulative[at - 1] ?? 0) + probability))
      partial.push((partial[at - 1] ?? 0) + at * probability)
    }
  }
  return {
    mean,
    cumulative: pieces => {
      if (pieces < 0) return 0
      fill(Math.floor(pieces))
      return cumulative[Math.floor(pieces)] ?? 1
    },
    expectedShortage: stock => {
      const whole = Math.max(0, Math.floor(stock))
      fill(whole)
      // E(X - S)+ = E X - E(X; X <= S) - S P(X > S)
      return Math.max(0, mean - (partial[whole] ?? mean) - whole * (1 - (cumulative[whole] ?? 1)))
    },
  }
}

/** Poisson demand with this mean. */
export function poissonDemand(mean: number): LeadTimeDemand {
  return wholeDemand(mean, function* probabilities() {
    let probability = Math.exp(-mean)
    for (let pieces = 1; ; pieces++) {
      yield probability
      probability *= mean / pieces
    }
  })
}

/** Negative binomial demand by its moments; the variance must be above the mean. */
export function negativeBinomialDemand(mean: number, variance: number): LeadTimeDemand {
  const successes = (mean * mean) / (variance - mean)
  const chance = mean / variance
  return wholeDemand(mean, function* probabilities() {
    let probability = chance ** successes
    for (let pieces = 0; ; pieces++) {
      yield probability
      probability *= ((successes + pieces) / (pieces + 1)) * (1 - chance)
    }
  })
}

/** So many orders on average, Poisson, each of a size with its probability (Panjer's recursion, ASTIN Bulletin 12, 1981). */
export function compoundPoissonDemand(orders: number, sizes: ReadonlyMap<number, number>): LeadTimeDemand {
  const meanSize = [...sizes].reduce((sum, [size, probability]) => sum + size * probability, 0)
  return wholeDemand(orders * meanSize, function* probabilities() {
    const found = [Math.exp(-orders * (1 - (sizes.get(0) ?? 0)))]
    for (let pieces = 0; ; pieces++) {
      yield found[pieces] ?? 0
      let sum = 0
      for (const [size, probability] of sizes)
        if (size > 0 && size <= pieces + 1) sum += size * probability * (found[pieces + 1 - size] ?? 0)
      found.push((orders / (pieces + 1)) * sum)
    }
  })
}

/** Demand of several equal weeks, each with these probabilities of 0, 1, 2 … pieces, one independent of the other. */
export function convolvedDemand(weekly: readonly number[], weeks: number): LeadTimeDemand {
  const meanOfWeek = weekly.reduce((sum, probability, pieces) => sum + pieces * probability, 0)
  let all: readonly number[] = [1]
  for (let week = 0; week < weeks; week++) all = convolve(all, weekly)
  return wholeDemand(meanOfWeek * weeks, () => all[Symbol.iterator]())
}

function convolve(one: readonly number[], other: readonly number[]): number[] {
  const both = Array.from({ length: one.length + other.length - 1 }, () => 0)
  for (const [at, p] of one.entries())
    for (const [to, q] of other.entries()) both[at + to] = (both[at + to] ?? 0) + p * q
  return both
}
