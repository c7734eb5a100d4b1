import type { JobState, JobVisit } from '../../shared-schemas/jobs.ts'

export interface Standing {
  readonly state: JobState
  /** Null while it is open. A job that was given up was not finished. */
  readonly finishedFirstVisit: boolean | null
}

/**
 * How a job stands by its visits, in order of time. The last word holds; opening it again is no visit, and takes the
 * ending before it back. A job of a file has no visits here, and stands as the file says.
 */
export function decideState(
  visits: readonly Pick<JobVisit, 'outcome'>[],
  saidByFile: boolean | null,
): Standing {
  if (visits.length === 0)
    return { state: saidByFile === null ? 'open' : 'finished', finishedFirstVisit: saidByFile }
  const made = visits.filter(({ outcome }, at) => outcome !== 'reopened' && !isTakenBack(visits, at))
  const last = visits.at(-1)?.outcome
  if (last === 'finished' || last === 'given-up')
    return { state: last, finishedFirstVisit: last === 'finished' && made.length === 1 }
  return { state: 'open', finishedFirstVisit: null }
}

/** An ending that the job was opened again after was a mistake. */
function isTakenBack(visits: readonly Pick<JobVisit, 'outcome'>[], at: number): boolean {
  return visits[at]?.outcome !== 'not-finished' && visits[at + 1]?.outcome === 'reopened'
}
