import type { FaultCheck } from '../../shared-schemas/fault-guide.ts'
import { type GuideOfSymptom, likelihoodsUnder } from './guide.ts'
import type { OpenCheck } from './reasoning/choose-check.ts'
import type { LearntCause } from './reasoning/learn-prior.ts'
import { reckonEffort } from './reasoning/reckon-effort.ts'
import type { FaultCase } from './reasoning/weigh-case.ts'
import { remedyOfCause } from './remedy-of-cause.ts'

/** What the guide says of a symptom, with what the shop's jobs made of its causes, as the reasoning takes it. */
export function buildCase({ causes, checks }: GuideOfSymptom, learnt: readonly LearntCause[]): FaultCase {
  const remedies = new Map(causes.map(cause => [cause.cause, remedyOfCause(cause)]))
  return {
    prior: new Map(learnt.map(({ cause, prior }) => [cause, prior])),
    remedyOf: cause => remedies.get(cause) ?? cause,
    checks: checks.map(check => openCheck(check, [...remedies.keys()])),
  }
}

function openCheck(check: FaultCheck, causes: readonly string[]): OpenCheck {
  const likelihoods = new Map(causes.map(cause => [cause, likelihoodsUnder(check, cause)]))
  return {
    check: check.check,
    effort: reckonEffort(check).minutes,
    outcomes: check.outcomes.map((outcome, at) => ({
      outcome,
      likelihoods: new Map(causes.map(cause => [cause, likelihoods.get(cause)?.[at] ?? 0])),
    })),
  }
}
