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
  const byType = smoothCounts(byGuide, ofType.reckoned, worthOfGuide)
  const jobsOfPlatform = platform === null ? [] : jobs.filter(job => job.platform === platform)
  const ofPlatform = countJobs(causes, byGuide, jobsOfPlatform)
  const prior = smoothCounts(byType, ofPlatform.reckoned, worthOfType)
  return causes.map(({ cause }) => ({
    cause,
    byGuide: byGuide.get(cause) ?? 0,
    jobsOfType: ofType.told.get(cause) ?? 0,
    byType: byType.get(cause) ?? 0,
    jobsOfPlatform: ofPlatform.told.get(cause) ?? 0,
    prior: prior.get(cause) ?? 0,
  }))
}

/** The guide counts as much as twenty jobs of the shop; what the type has taught, as eight of a platform. Our choice. */
export const worthOfGuide = 20
export const worthOfType = 8

interface JobCounts {
  /** Jobs that speak for a cause. */
  readonly told: ReadonlyMap<string, number>
  /** The same with the jobs that must be reckoned beside them. */
  readonly reckoned: ReadonlyMap<string, number>
}

/**
 * Jobs by cause. One that names its cause counts for that. One that tells only what was fitted counts for the causes
 * that this puts right, in the proportion of their shares; one that fits no cause of the guide counts for none.
 * A job that needed no part and names no cause is not seen at all. So that causes without a part do not fade away for
 * that, each job that tells only its part is taken to have as many unseen beside it as their shares say.
 */
function countJobs(causes: readonly GuideCause[], shares: Belief, jobs: readonly FinishedJob[]): JobCounts {
  const shareOf = (cause: string) => shares.get(cause) ?? 0
  const told = new Map<string, number>()
  let byPartAlone = 0
  for (const job of jobs) {
    const open = causesOf(causes, job)
    const all = sum(open.map(shareOf))
    for (const cause of open) told.set(cause, (told.get(cause) ?? 0) + shareOf(cause) / all)
    if (open.length > 0 && !isNamed(causes, job)) byPartAlone += 1
  }
  const withPart = sum(causes.filter(hasPart).map(({ cause }) => shareOf(cause)))
  const unseen = causes
    .filter(cause => !hasPart(cause))
    .map(({ cause }) => [cause, (told.get(cause) ?? 0) + (byPartAlone * shareOf(cause)) / withPart] as const)
  return { told, reckoned: byPartAlone === 0 ? told : new Map([...told, ...unseen]) }
}

function hasPart({ families }: GuideCause): boolean {
  return families.length > 0
}

function isNamed(causes: readonly GuideCause[], job: FinishedJob): boolean {
  return causes.some(({ cause }) => cause === job.cause)
}

function causesOf(causes: readonly GuideCause[], job: FinishedJob): readonly string[] {
  if (job.cause !== null && isNamed(causes, job)) return [job.cause]
  return causes
    .filter(({ families }) => families.some(family => job.families.includes(family)))
    .map(({ cause }) => cause)
}
