import { z } from 'zod'
import type { Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const nullableText = z.string().nullable()

const finishedRow = z.object({
  job: z.string(),
  date: z.string(),
  brand: nullableText,
  model_number: nullableText,
  platform: nullableText,
  appliance_type: nullableText,
  symptom: z.string(),
  cause_key: nullableText,
  cause: nullableText,
  needed: z.string(),
  fitted: z.string(),
  finished_first_visit: z.int(),
})

/**
 * Jobs that ended with the appliance working, in order of time, for whoever learns from them; of one kind of
 * appliance or of all. What a job of a file had
 * fitted is what was used for it; one that was given up teaches nothing about what was wrong.
 */
export function listFinishedJobs(
  database: ReadableDatabase,
  applianceType: string | null = null,
): Output<'jobs.list-finished-jobs'>['jobs'] {
  return database
    .rows(
      finishedRow,
      `SELECT job.job AS job, job.date AS date, brand.name AS brand, model_number, nullif(platform, '') AS platform,
         nullif(appliance_type, '') AS appliance_type, symptom, cause_key, cause, finished_first_visit,
         ifnull((SELECT json_group_array(family ORDER BY family) FROM ${neededFamilies}), '[]') AS needed,
         ifnull(fitted.families, '[]') AS fitted
       FROM job LEFT JOIN brand ON brand.brand_id = job.brand_id LEFT JOIN model USING (model_id)
         LEFT JOIN job_visit AS visit ON visit.job_visit_id =
           (SELECT max(job_visit_id) FROM job_visit WHERE job_visit.job = job.job)
         LEFT JOIN (SELECT job, json_group_array(family ORDER BY family) AS families FROM (
           SELECT job, family FROM job_fitting JOIN part USING (part_id) JOIN family USING (family_id)
             GROUP BY job, family HAVING sum(job_fitting.quantity) > 0
           UNION
           SELECT job, family FROM usage JOIN part USING (part_id) JOIN family USING (family_id)
             WHERE job <> '' GROUP BY job, family HAVING sum(usage.quantity) > 0) GROUP BY job) AS fitted
           ON fitted.job = job.job
       WHERE finished_first_visit IS NOT NULL AND ifnull(outcome, 'finished') = 'finished'
         AND (?1 IS NULL OR appliance_type = ?1)
       ORDER BY job.date, job.job`,
      applianceType,
    )
    .map(row => ({
      ...{ job: row.job, date: row.date, brand: row.brand, modelNumber: row.model_number },
      ...{ platform: row.platform, applianceType: row.appliance_type, symptom: row.symptom },
      ...{ causeKey: row.cause_key, cause: row.cause },
      familiesNeeded: familyList.parse(JSON.parse(row.needed)),
      familiesFitted: familyList.parse(JSON.parse(row.fitted)),
      finishedFirstVisit: row.finished_first_visit === 1,
    }))
}

/** What was asked for at any time: by a file, or on a sheet and perhaps struck off again, since it was thought to be needed. */
const neededFamilies = `(
  SELECT family FROM job_family JOIN family USING (family_id)
    WHERE job_family.job = job.job AND NOT EXISTS (SELECT 1 FROM job_sheet WHERE job_sheet.job = job.job)
  UNION
  SELECT family FROM job_need LEFT JOIN part USING (part_id)
    JOIN family ON family.family_id = ifnull(job_need.family_id, part.family_id)
    WHERE job_need.job = job.job AND job_need.quantity > 0)`

const familyList = z.array(z.string())
