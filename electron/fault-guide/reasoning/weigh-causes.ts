import { type Belief, type Likelihoods, likelihoodOf, shareOut } from './belief.ts'

/**
 * The belief after some outcomes, each independent of the others once the cause is known: Bayes' rule,
 * P(cause | outcomes) = P(cause) · Π P(outcome | cause) / Σ of the same over all causes.
 * The order of the outcomes makes no difference.
 */
export function weighCauses(prior: Belief, outcomes: readonly Likelihoods[]): Belief {
  return shareOut(
    new Map(
      [...prior].map(([cause, probability]) => [
        cause,
        outcomes.reduce((product, likelihoods) => product * likelihoodOf(likelihoods, cause), probability),
      ]),
    ),
  )
}

/** The likeliest first; those alike by their key, so that a list never jumps. */
export function rankCauses(belief: Belief): { readonly cause: string; readonly probability: number }[] {
  return [...belief]
    .map(([cause, probability]) => ({ cause, probability }))
    .sort((one, other) => other.probability - one.probability || (one.cause < other.cause ? -1 : 1))
}
