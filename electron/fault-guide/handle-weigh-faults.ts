import type { WeighedFaults } from '../../shared-schemas/fault-finding.ts'
import type { FaultCause, FaultCheck, FaultSymptom } from '../../shared-schemas/fault-guide.ts'
import type { CheckedInput } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { orRefuse, Refusal } from '../requests/refusal.ts'
import { readApplianceFacts } from './appliance-queries.ts'
import type { FaultShop, ShopJob } from './fault-shop.ts'
import type { GuideOfSymptom } from './guide.ts'
import { listSymptoms, readGuide } from './guide-queries.ts'
import { judgeReading } from './judge-reading.ts'
import { jobsOfSymptom, namesOfSymptom, plainSymptom } from './match-symptom.ts'
import { nameCause } from './name-cause.ts'
import { type JudgeReading, readAnswers } from './read-answers.ts'
import type { ReadingFacts } from './readings/find-limits.ts'
import { type FinishedJob, type GuideCause, learnPrior } from './reasoning/learn-prior.ts'
import { familiesOfCheck, isReckoned, readStatedValues } from './stated-values-queries.ts'
import { weighFaults } from './weigh-faults.ts'
import { wordExpected } from './word-expected.ts'

/** Weighs the causes of a symptom by the guide, the shop's own jobs and the answers so far. */
export function handleWeighFaults(
  { database, findModels, listFinishedJobs }: FaultShop,
  { applianceType, symptom, appliance, answers }: CheckedInput<'fault-guide.weigh-faults'>,
): WeighedFaults {
  const { guide, said } = guideOf(database, { applianceType, symptom })
  const modelIds = appliance === undefined ? [] : findModels(appliance)
  const facts = readApplianceFacts(database, modelIds)
  const jobs = jobsOfSymptom(listFinishedJobs(applianceType), said).map(asFinishedJob(guide))
  const learnt = learnPrior(guide.causes.map(asGuideCause), jobs, facts.platform)
  const plate = { volts: appliance?.volts ?? facts.volts, watts: appliance?.watts ?? facts.watts }
  const factsFor = (check: FaultCheck): ReadingFacts =>
    isReckoned(check)
      ? { ...plate, ...readStatedValues(database, modelIds, familiesOfCheck(guide, check)) }
      : plate
  const judge: JudgeReading = (check, typed) => judgeReading(check, typed, factsFor(check))
  const read = orRefuse(readAnswers(guide.checks, answers, judge))
  return {
    applianceType,
    symptom: said.symptom,
    platform: facts.platform,
    jobs: {
      ofType: jobs.length,
      ofPlatform: jobs.filter(({ platform }) => platform !== null && platform === facts.platform).length,
    },
    ...weighFaults(guide, learnt, read, check => wordExpected(check, factsFor(check))),
  }
}

/** The guide under a symptom's own name or another word for it. */
function guideOf(
  database: ReadableDatabase,
  { applianceType, symptom }: { readonly applianceType: string; readonly symptom: string },
): { readonly said: FaultSymptom; readonly guide: GuideOfSymptom } {
  const symptoms = listSymptoms(database, applianceType)
  const plain = plainSymptom(symptom)
  const said =
    symptoms.find(known => plainSymptom(known.symptom) === plain) ??
    symptoms.find(known => namesOfSymptom(known).includes(plain))
  const guide = said && readGuide(database, { applianceType, symptom: said.symptom })
  if (said === undefined || guide === undefined)
    throw new Refusal({
      code: 'symptom-not-in-guide',
      applianceType,
      symptom,
      known: symptoms.map(known => known.symptom),
    })
  return { said, guide }
}

function asFinishedJob({ causes }: GuideOfSymptom) {
  const named = causes.map(({ cause }) => cause)
  return (job: ShopJob): FinishedJob => ({
    platform: job.platform,
    cause: nameCause(named, job),
    // What was fitted tells more than what was thought to be needed; a job of a file often tells only the latter.
    families: job.familiesFitted.length > 0 ? job.familiesFitted : job.familiesNeeded,
  })
}

function asGuideCause({ cause, weight, families }: FaultCause): GuideCause {
  return { cause, weight, families: families.map(({ family }) => family) }
}
