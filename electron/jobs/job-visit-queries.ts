import { z } from 'zod'
import { type JobVisit, jobVisit, whyNot } from '../../shared-schemas/jobs.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { MovementStamp } from '../stock-ledger/append-movements.ts'

const visitRow = z.object({
  outcome: jobVisit.shape.outcome,
  why: whyNot.nullable(),
  note: z.string().nullable(),
  cause_key: z.string().nullable(),
  cause: z.string().nullable(),
  recorded_at: z.string(),
  initials: z.string(),
})

/** The visits of a job, in order of time. */
export function listVisits(database: ReadableDatabase, job: string): JobVisit[] {
  return database
    .rows(
      visitRow,
      `SELECT outcome, why, note, cause_key, cause, recorded_at, initials FROM job_visit
       WHERE job = ? ORDER BY job_visit_id`,
      job,
    )
    .map(({ cause_key, recorded_at, ...visit }) => ({
      ...visit,
      causeKey: cause_key,
      recordedAt: recorded_at,
    }))
}

export function appendVisit(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  visit: Omit<JobVisit, 'recordedAt'> & { readonly job: string },
): void {
  const { job, outcome, why, note, causeKey, cause, initials } = visit
  database.run(
    `INSERT INTO job_visit (job_visit_id, job, outcome, why, note, cause_key, cause, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[newId(), job, outcome, why, note, causeKey, cause, now().toISOString(), device, initials],
  )
}
