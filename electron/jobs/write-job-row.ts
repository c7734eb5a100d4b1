import { z } from 'zod'
import type { WritableDatabase } from '../database/handles.ts'
import { decideState } from './decide-state.ts'
import { listJobParts, listNeeds } from './job-part-queries.ts'
import { plateOf } from './job-sheet.ts'
import { findJob, listOpenedOn, readSheet } from './job-sheet-queries.ts'
import { listVisits } from './job-visit-queries.ts'
import type { JobsShop } from './jobs-shop.ts'

const idsRow = z.object({ location_id: z.int().nullable(), brand_id: z.int().nullable() })

/**
 * Writes the row of a job out of its sheets, needs and visits, so that whatever reads the jobs of a file reads it too. It
 * depends on nothing else: two machines that hold the same sheets write the same row.
 */
export function writeJobRow(
  database: WritableDatabase,
  { lookUpPlate }: Pick<JobsShop, 'lookUpPlate'>,
  job: string,
): void {
  const sheet = readSheet(database, job)
  const settled = lookUpPlate(plateOf(sheet))?.settled ?? null
  const ids = database.row(
    idsRow,
    `SELECT (SELECT location_id FROM location WHERE location = ?) AS location_id,
       (SELECT brand_id FROM brand WHERE name = ? COLLATE NOCASE) AS brand_id`,
    sheet.van,
    settled?.brand ?? sheet.brand,
  )
  const visits = listVisits(database, job)
  const { finishedFirstVisit } = decideState(visits, findJob(database, job)?.saidByFile ?? null)
  const finished = finishedFirstVisit === null ? null : Number(finishedFirstVisit)
  database.run(
    `INSERT INTO job (job, date, location_id, brand_id, model_id, symptom, finished_first_visit)
     VALUES (?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT DO UPDATE SET date = excluded.date, location_id = excluded.location_id, brand_id = excluded.brand_id,
       model_id = excluded.model_id, symptom = excluded.symptom,
       finished_first_visit = excluded.finished_first_visit`,
    ...[job, sheet.date, ids?.location_id ?? null, ids?.brand_id ?? null, settled?.modelId ?? null],
    ...[sheet.symptom, finished],
  )
  if (listOpenedOn(database, job).length > 0) database.run('DELETE FROM job_family WHERE job = ?', job)
  for (const familyId of listFamilies(database, job))
    database.run(
      'INSERT INTO job_family (job, family_id) VALUES (?, ?) ON CONFLICT DO NOTHING',
      job,
      familyId,
    )
}

/** Families that are needed by the last word, or were fitted. What a file said of its job stays beside them. */
function listFamilies(database: WritableDatabase, job: string): Set<number> {
  const fitted = listJobParts(database, job).filter(part => part.fitted > 0)
  return new Set([...listNeeds(database, job), ...fitted].map(({ familyId }) => familyId))
}
