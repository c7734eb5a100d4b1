import { z } from 'zod'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { jobState } from '../../shared-schemas/jobs.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const listedRow = z.object({
  job: z.string(),
  date: z.string(),
  van: z.string().nullable(),
  brand: z.string().nullable(),
  model: z.string(),
  symptom: z.string(),
  customer: z.string().nullable(),
  state: jobState,
  finished_first_visit: z.int().nullable(),
  in_hand: z.int(),
})

/** Jobs, the latest first; the row of each is written out of its sheets, so the state is in it but for giving up. */
export function listJobs(
  database: ReadableDatabase,
  { state, van, text, most }: Omit<CheckedInput<'jobs.list-jobs'>, 'van'> & { readonly van: string | null },
): Output<'jobs.list-jobs'> {
  const rows = database.rows(
    listedRow,
    `SELECT job, date, van, brand, model, symptom, customer, state, finished_first_visit,
       (SELECT ifnull(sum(CASE WHEN to_location_id IS NULL THEN quantity ELSE -quantity END), 0) FROM movement
        WHERE reference = told.job AND outside = 'job')
       - (SELECT ifnull(sum(quantity), 0) FROM job_fitting WHERE job_fitting.job = told.job) AS in_hand
     FROM (SELECT job.job AS job, job.date AS date, location AS van, ifnull(sheet.brand, brand.name) AS brand,
         coalesce(nullif(sheet.model, ''), model_number, '') AS model, job.symptom AS symptom, customer,
         CASE WHEN finished_first_visit IS NULL THEN 'open'
           WHEN (SELECT outcome FROM job_visit WHERE job_visit.job = job.job ORDER BY job_visit_id DESC LIMIT 1)
             = 'given-up' THEN 'given-up'
           ELSE 'finished' END AS state,
         finished_first_visit
       FROM job LEFT JOIN location USING (location_id) LEFT JOIN brand ON brand.brand_id = job.brand_id
         LEFT JOIN model USING (model_id)
         LEFT JOIN job_sheet AS sheet ON sheet.job_sheet_id =
           (SELECT max(job_sheet_id) FROM job_sheet WHERE job_sheet.job = job.job)) AS told
     WHERE (?1 = 'all' OR (state = 'open') = (?1 = 'open'))
       AND (?2 IS NULL OR van = ?2)
       AND (?3 = '' OR instr(lower(job || ' ' || ifnull(brand, '') || ' ' || model || ' ' || symptom || ' '
         || ifnull(customer, '')), lower(?3)) > 0)
     ORDER BY date DESC, job DESC LIMIT ?4`,
    ...[state, van, text, most + 1],
  )
  return {
    jobs: rows.slice(0, most).map(({ finished_first_visit: finished, in_hand, ...row }) => ({
      ...row,
      finishedFirstVisit: finished === null ? null : finished === 1,
      inHand: in_hand,
    })),
    more: rows.length > most,
  }
}
