import type { Lesson } from '../../shared-schemas/fault-finding.ts'
import type { FaultSymptom } from '../../shared-schemas/fault-guide.ts'
import type { ShopJob } from './fault-shop.ts'
import { judgeProposal, type KeptProposal } from './judge-proposal.ts'
import { jobsOfSymptom } from './match-symptom.ts'

/**
 * What finished jobs teach of each symptom that they had, the highest share of wrong orders first. `proposals` are what
 * the guide proposed first, by job; where it was asked again for a job, its first answer counts.
 */
export function reckonLessons(
  symptoms: readonly FaultSymptom[],
  jobs: readonly ShopJob[],
  proposals: ReadonlyMap<string, KeptProposal>,
): { readonly lessons: Lesson[]; readonly notInGuide: number } {
  const byType = Map.groupBy(jobs, ({ applianceType }) => applianceType)
  const lessons = symptoms.flatMap(symptom => {
    const ofSymptom = jobsOfSymptom(byType.get(symptom.applianceType) ?? [], symptom)
    return ofSymptom.length === 0 ? [] : [teach(symptom, ofSymptom, proposals)]
  })
  const inGuide = new Set(
    symptoms.flatMap(symptom =>
      jobsOfSymptom(byType.get(symptom.applianceType) ?? [], symptom).map(({ job }) => job),
    ),
  )
  return { lessons: lessons.sort(worstFirst), notInGuide: jobs.length - inGuide.size }
}

function teach(
  { applianceType, symptom }: FaultSymptom,
  jobs: readonly ShopJob[],
  proposals: ReadonlyMap<string, KeptProposal>,
): Lesson {
  const told = jobs.filter(({ familiesFitted }) => familiesFitted.length > 0)
  const judged = jobs.flatMap(job => {
    const proposal = proposals.get(job.job)
    const isRight = proposal === undefined ? null : judgeProposal(proposal, job)
    return isRight === null ? [] : [isRight]
  })
  return {
    applianceType,
    symptom,
    jobs: jobs.length,
    secondVisits: jobs.filter(({ finishedFirstVisit }) => !finishedFirstVisit).length,
    told: told.length,
    wrongOrders: told.filter(isOrderedInVain).length,
    proposals: judged.length,
    firstRight: judged.filter(isRight => isRight).length,
  }
}

/** Something was thought to be needed and did not go in. */
function isOrderedInVain({ familiesNeeded, familiesFitted }: ShopJob): boolean {
  return familiesNeeded.some(family => !familiesFitted.includes(family))
}

function worstFirst(one: Lesson, other: Lesson): number {
  const share = ({ wrongOrders, told }: Lesson) => (told === 0 ? 0 : wrongOrders / told)
  return (
    share(other) - share(one) ||
    other.secondVisits / other.jobs - one.secondVisits / one.jobs ||
    other.jobs - one.jobs
  )
}
