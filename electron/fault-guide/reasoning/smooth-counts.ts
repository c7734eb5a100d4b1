import { type Belief, sum } from './belief.ts'

/**
 * What the shop's own jobs make of an expectation: the mean of a Dirichlet distribution that is worth `worth` jobs
 * before any was seen, (count + worth · expected) / (all counts + worth). Without jobs it is the expectation; with many
 * it is their shares. Counts may be fractions, where a job tells two causes apart only in part.
 */
export function smoothCounts(expected: Belief, counts: ReadonlyMap<string, number>, worth: number): Belief {
  const all = sum(Array.from(expected.keys(), cause => counts.get(cause) ?? 0))
  return new Map(
    [...expected].map(([cause, share]) => [
      cause,
      ((counts.get(cause) ?? 0) + worth * share) / (all + worth),
    ]),
  )
}
