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

/** What a good one reads on this appliance; null where nothing is measured. */
export type WordExpected = (check: FaultCheck) => string | null

/** What is told of a symptom: causes, remedies, what to check next and every figure behind them. */
export function weighFaults(
  guide: GuideOfSymptom,
  learnt: readonly LearntCause[],
  answers: readonly SettledAnswer[],
  wordExpected: WordExpected,
): Pick<WeighedFaults, 'causes' | 'remedies' | 'end' | 'settledOn' | 'checks' | 'answers'> {
  const describe: Describe = name => describeCheck(guide.checks, name, wordExpected)
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
    checks: checks.flatMap(weighed => offerCheck(describe, weighed)),
    answers: answers.flatMap(answer => tellAnswer(describe, odd, answer)),
  }
}

type Describe = (check: string) => DescribedCheck[]

function offerCheck(describe: Describe, { check, bits }: WeighedCheck): OfferedCheck[] {
  return describe(check).map(described => ({ ...described, bits }))
}

function describeCheck(
  checks: readonly FaultCheck[],
  name: string,
  wordExpected: WordExpected,
): DescribedCheck[] {
  const found = checks.find(({ check }) => check === name)
  if (found === undefined) return []
  const { otherwise: _, byCause: __, tolerance: ___, ...check } = found
  const { minutes: effort, added } = reckonEffort(found)
  return [
    {
      ...check,
      expected: wordExpected(found),
      ...{ effort, added: [...added], cautions: cautionCheck(found) },
    },
  ]
}

function tellAnswer(
  describe: Describe,
  odd: readonly OddReading[],
  { check, outcome, measured, left }: SettledAnswer,
): ReadAnswer[] {
  const oddAtBest = odd.find(found => found.check === check)?.atBest ?? null
  return describe(check).map(asked => ({ asked, outcome, measured, left, oddAtBest }))
}
