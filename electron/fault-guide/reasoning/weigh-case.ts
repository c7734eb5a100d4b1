import type { Belief, Likelihoods } from './belief.ts'
import { type OpenCheck, rankChecks, type WeighedCheck } from './choose-check.ts'
import { decideEnd, type End, type RankedRemedy, rankRemedies } from './decide-end.ts'
import { findOddReadings, type OddReading } from './find-odd-readings.ts'
import { weighCauses } from './weigh-causes.ts'

/** One symptom of one kind of appliance, as the reasoning sees it. */
export interface FaultCase {
  /** With the shop's own jobs in it. */
  readonly prior: Belief
  /** What puts each cause right: the part to buy, or what is done without one. */
  readonly remedyOf: (cause: string) => string
  /** In the order in which the guide lists them. */
  readonly checks: readonly OpenCheck[]
}

/** A check that was asked. `outcome` is null where it was skipped or could not be told. */
export interface GivenAnswer {
  readonly check: string
  readonly outcome: string | null
}

export interface WeighedCase {
  readonly belief: Belief
  readonly remedies: readonly RankedRemedy[]
  readonly end: End
  /** What is left to ask, the best first; also where it has ended, for whoever wants to be surer. */
  readonly checks: readonly WeighedCheck[]
  readonly odd: readonly OddReading[]
}

/** What the answers so far make of a case. A check that was skipped says nothing and is not offered again. */
export function weighCase(faultCase: FaultCase, answers: readonly GivenAnswer[]): WeighedCase {
  const { prior, remedyOf } = faultCase
  const readings = answers.flatMap(answer => readingOf(faultCase, answer))
  const belief = weighCauses(
    prior,
    readings.map(({ likelihoods }) => likelihoods),
  )
  const given = new Set(answers.map(({ check }) => check))
  const checks = rankChecks(
    belief,
    faultCase.checks.filter(({ check }) => !given.has(check)),
  )
  const remedies = rankRemedies(belief, remedyOf)
  return {
    belief,
    remedies,
    end: decideEnd(remedies, checks.length),
    checks,
    odd: findOddReadings(prior, readings),
  }
}

function readingOf(
  { checks }: FaultCase,
  { check, outcome }: GivenAnswer,
): { readonly check: string; readonly likelihoods: Likelihoods }[] {
  if (outcome === null) return []
  const likelihoods = checks
    .find(open => open.check === check)
    ?.outcomes.find(possible => possible.outcome === outcome)?.likelihoods
  if (likelihoods === undefined) throw new Error(`${check} has no outcome ${outcome}`)
  return [{ check, likelihoods }]
}
