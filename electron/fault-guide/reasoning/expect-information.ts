import { type Belief, likelihoodOf, type Outcome, sum } from './belief.ts'
import { weighCauses } from './weigh-causes.ts'

/** Shannon's entropy of shares that sum to 1, in bits: -Σ p log₂ p, a share of 0 adding nothing. */
export function measureEntropy(shares: Iterable<number>): number {
  let bits = 0
  for (const share of shares) if (share > 0) bits -= share * Math.log2(share)
  return bits
}

/** How probable an outcome is before it is seen: Σ P(cause) P(outcome | cause). */
export function expectOutcome(belief: Belief, { likelihoods }: Outcome): number {
  return sum(Array.from(belief, ([cause, probability]) => probability * likelihoodOf(likelihoods, cause)))
}

/**
 * By how many bits a check is expected to lower the entropy of the belief: the mutual information of cause and outcome,
 * H(cause) - Σ P(outcome) H(cause | outcome). The outcomes are all there are. Never below 0 but for rounding.
 */
export function expectInformation(belief: Belief, outcomes: readonly Outcome[]): number {
  const left = outcomes.map(outcome => {
    const probability = expectOutcome(belief, outcome)
    if (probability === 0) return 0
    return probability * measureEntropy(weighCauses(belief, [outcome.likelihoods]).values())
  })
  return measureEntropy(belief.values()) - sum(left)
}
