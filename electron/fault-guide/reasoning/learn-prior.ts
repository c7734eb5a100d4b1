import { type Belief, shareOut, sum } from './belief.ts'
import { smoothCounts } from './smooth-counts.ts'

/** A cause as the guide weighs it for one symptom. */
export interface GuideCause {
  readonly cause: string
  readonly weight: number
  /** Parts that put it right; empty where none is needed. */
  readonly families: readonly string[]
}

/** What a finished job of the shop says of its symptom. */
export interface FinishedJob {
  readonly platform: string | null
  /** The guide's cause, where the job names it. */
  readonly cause: string | null
  /** What was fitted or needed. */
  readonly families: readonly string[]
}

export interface LearntCause {
  readonly cause: string
  /** Share by the guide alone. */
  readonly byGuide: number
  /** Jobs of the appliance type that speak for it; a fraction where a job leaves several causes open. */
  readonly jobsOfType: number
  readonly byType: number
  readonly jobsOfPlatform: number
  /** What the reasoning begins with. */
  readonly prior: number
}

/**
 * The causes of a symptom before any check: the guide's weights, bent by the shop's jobs of the appliance type, and these
 * by its jobs of the model's platform. With few jobs of a platform the appliance type stands, with few of that the guide.
 */
export function learnPrior(
  causes: readonly GuideCause[],
  jobs: readonly FinishedJob[],
  platform: string | null,
): LearntCause[] {
  const byGuide = shareOut(new Map(causes.map(({ cause, weight }) => [cause, weight])))
  const ofType = countJobs(causes, byGuide, jobs)
  const byType = smoothCounts(byGuide, ofType, worthOfGuide)
  const jobsOfPlatform = platform === null ? [] : jobs.filter(job => job.platform === platform)
  const ofPlatform = countJobs(causes, byGuide, jobsOfPlatform)
  const prior = smoothCounts(byType, ofPlatform, worthOfType)
  return causes.map(({ cause }) => ({
    cause,
    byGuide: byGuide.get(cause) ?? 0,
    jobsOfType: ofType.get(cause) ?? 0,
    byType: byType.get(cause) ?? 0,
    jobsOfPlatform: ofPlatform.get(cause) ?? 0,
    prior: prior.get(cause) ?? 0,
  }))
}

/** The guide counts as much as twenty jobs of the shop; what the type has taught, as eight of a platform. Our choice. */
export const worthOfGuide = 20
export const worthOfType = 8

/**
 * Jobs by cause. One that names its cause counts for that. One that tells only what was fitted counts for the causes
 * that this puts right, in the proportion of their shares; one that fits no cause of the guide counts for none.
 */
function countJobs(
  causes: readonly GuideCause[],
  shares: Belief,
  jobs: readonly FinishedJob[],
): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const job of jobs) {
    const open = causesOf(causes, job)
    const all = sum(open.map(cause => shares.get(cause) ?? 0))
    for (const cause of open) counts.set(cause, (counts.get(cause) ?? 0) + (shares.get(cause) ?? 0) / all)
  }
  return counts
}

function causesOf(causes: readonly GuideCause[], job: FinishedJob): readonly string[] {
  if (job.cause !== null && causes.some(({ cause }) => cause === job.cause)) return [job.cause]
  return causes
    .filter(({ families }) => families.some(family => job.families.includes(family)))
    .map(({ cause }) => cause)
}
