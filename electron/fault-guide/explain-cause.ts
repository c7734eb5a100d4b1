import type { CauseArithmetic } from '../../shared-schemas/fault-finding.ts'
import type { LearntCause } from './reasoning/learn-prior.ts'
import type { FaultCase, GivenAnswer } from './reasoning/weigh-case.ts'

/** The figures of every cause, to be opened: its shares before any check, the factor of each answer, and the sum. */
export function explainCauses(
  faultCase: FaultCase,
  learnt: readonly LearntCause[],
  answers: readonly GivenAnswer[],
): ReadonlyMap<string, CauseArithmetic> {
  const products = learnt.map(cause => {
    const factors = answers.flatMap(answer => factorOf(faultCase, answer, cause.cause))
    const product = factors.reduce((all, { likelihood }) => all * likelihood, cause.prior)
    return { cause, factors, product }
  })
  const total = products.reduce((all, { product }) => all + product, 0)
  return new Map(
    products.map(({ cause: { cause, ...shares }, factors, product }) => [
      cause,
      { ...shares, factors, product, total },
    ]),
  )
}

function factorOf({ checks }: FaultCase, { check, outcome }: GivenAnswer, cause: string) {
  const likelihood = checks
    .find(open => open.check === check)
    ?.outcomes.find(possible => possible.outcome === outcome)
    ?.likelihoods.get(cause)
  return outcome === null || likelihood === undefined ? [] : [{ check, outcome, likelihood }]
}
