/** How probable each cause is, by its key. The figures are above 0 and sum to 1. */
export type Belief = ReadonlyMap<string, number>

/** How probable one outcome of a check is under each cause, by the cause's key: P(outcome | cause). */
export type Likelihoods = ReadonlyMap<string, number>

/** One thing that a check may show. */
export interface Outcome {
  readonly outcome: string
  readonly likelihoods: Likelihoods
}

/** Weights of any size as shares of their sum. */
export function shareOut(weights: ReadonlyMap<string, number>): Belief {
  const total = sum(weights.values())
  if (!(total > 0)) throw new Error(`weights sum to above 0, not ${total}`)
  return new Map([...weights].map(([cause, weight]) => [cause, weight / total]))
}

export function likelihoodOf(likelihoods: Likelihoods, cause: string): number {
  const likelihood = likelihoods.get(cause)
  if (likelihood === undefined) throw new Error(`the guide gives every cause a likelihood; ${cause} has none`)
  return likelihood
}

export function sum(figures: Iterable<number>): number {
  let total = 0
  for (const figure of figures) total += figure
  return total
}
