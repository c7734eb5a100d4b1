import type {
  DescribedCheck,
  OfferedCheck,
  ReadAnswer,
  WeighedFaults,
} from '../../shared-schemas/fault-finding.ts'
import type { FaultCheck } from '../../shared-schemas/fault-guide.ts'
import { buildCase } from './build-case.ts'
import { cautionCheck } from './caution-check.ts'
import { explainCauses } from './explain-cause.ts'
import type { GuideOfSymptom } from './guide.ts'
import { listRemedies } from './list-remedies.ts'
import type { SettledAnswer } from './read-answers.ts'
import type { WeighedCheck } from './reasoning/choose-check.ts'
import type { OddReading } from './reasoning/find-odd-readings.ts'
import type { LearntCause } from './reasoning/learn-prior.ts'
import { reckonEffort } from './reasoning/reckon-effort.ts'
import { weighCase } from './reasoning/weigh-case.ts'
import { rankCauses } from './reasoning/weigh-causes.ts'

/** What is told of a symptom: causes, remedies, what to check next and every figure behind them. */
export function weighFaults(
  guide: GuideOfSymptom,
  learnt: readonly LearntCause[],
  answers: readonly SettledAnswer[],
): Pick<WeighedFaults, 'causes' | 'remedies' | 'end' | 'settledOn' | 'checks' | 'answers'> {
  const faultCase = buildCase(guide, learnt)
  const { belief, remedies, end, checks, odd } = weighCase(faultCase, answers)
  const ranked = rankCauses(belief)
  const arithmetic = explainCauses(faultCase, learnt, answers)
  return {
    causes: ranked.flatMap(({ cause, probability }) => {
      const said = guide.causes.find(known => known.cause === cause)
      const figures = arithmetic.get(cause)
      if (said === undefined || figures === undefined) return []
      return [{ cause, endsIn: said.endsIn, probability, arithmetic: figures }]
    }),
    remedies: listRemedies(remedies, guide.causes, ranked),
    end: end.end,
    settledOn: end.end === 'settled' ? end.remedies.length : 0,
    checks: checks.flatMap(weighed => offerCheck(guide.checks, weighed)),
    answers: answers.flatMap(answer => tellAnswer(guide.checks, odd, answer)),
  }
}

function offerCheck(checks: readonly FaultCheck[], { check, bits }: WeighedCheck): OfferedCheck[] {
  return describeCheck(checks, check).map(described => ({ ...described, bits }))
}

function describeCheck(checks: readonly FaultCheck[], name: string): DescribedCheck[] {
  const found = checks.find(({ check }) => check === name)
  if (found === undefined) return []
  const { otherwise: _, byCause: __, tolerance, ...check } = found
  const { minutes: effort, added } = reckonEffort(found)
  return [
    {
      ...check,
      expected: wordExpected(check.expected, tolerance),
      ...{ effort, added: [...added], cautions: cautionCheck(found) },
    },
  ]
}

function wordExpected(expected: string | null, tolerance: string | null): string | null {
  return expected === null || tolerance === null ? expected : `${expected}, ± ${tolerance}`
}

function tellAnswer(
  checks: readonly FaultCheck[],
  odd: readonly OddReading[],
  { check, outcome, measured, left }: SettledAnswer,
): ReadAnswer[] {
  const oddAtBest = odd.find(found => found.check === check)?.atBest ?? null
  return describeCheck(checks, check).map(asked => ({ asked, outcome, measured, left, oddAtBest }))
}
