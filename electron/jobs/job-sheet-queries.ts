import { z } from 'zod'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { MovementStamp } from '../stock-ledger/append-movements.ts'
import type { JobSheet } from './job-sheet.ts'

const nullableText = z.string().nullable()

const sheetRow = z.object({
  job: z.string(),
  date: z.string(),
  van: nullableText,
  model: z.string(),
  brand: nullableText,
  made: nullableText,
  serial: nullableText,
  volts: nullableText,
  hertz: nullableText,
  watts: nullableText,
  customer: nullableText,
  symptom: z.string(),
})

const jobRow = z.object({ job: z.string(), finished_first_visit: z.int().nullable() })

export interface FoundJob {
  readonly job: string
  /** What a file said of it; null where it did not, or where the job was opened here. */
  readonly saidByFile: boolean | null
}

/** The job with this number, however it is written. */
export function findJob(database: ReadableDatabase, typed: string): FoundJob | undefined {
  const sql = 'SELECT job, finished_first_visit FROM job WHERE job = ?'
  const row = database.row(jobRow, sql, typed) ?? database.row(jobRow, `${sql} COLLATE NOCASE`, typed)
  return (
    row && {
      job: row.job,
      saidByFile: row.finished_first_visit === null ? null : row.finished_first_visit === 1,
    }
  )
}

/** The facts of a job as they were written last; of a job that only a file has, what the file said. */
export function readSheet(database: ReadableDatabase, job: string): JobSheet {
  const sheet =
    database.row(
      sheetRow,
      `SELECT job, date, location AS van, model, brand, made, serial, volts, hertz, watts, customer, symptom
       FROM job_sheet LEFT JOIN location USING (location_id) WHERE job = ? ORDER BY job_sheet_id DESC LIMIT 1`,
      job,
    ) ??
    database.row(
      sheetRow,
      `SELECT job, date, location AS van, ifnull(model_number, '') AS model, brand.name AS brand, NULL AS made,
         NULL AS serial, NULL AS volts, NULL AS hertz, NULL AS watts, NULL AS customer, symptom
       FROM job LEFT JOIN location USING (location_id) LEFT JOIN brand ON brand.brand_id = job.brand_id
         LEFT JOIN model USING (model_id)
       WHERE job = ?`,
      job,
    )
  if (sheet === undefined) throw new Error(`a job that was found is read, but ${job} is not there`)
  return sheet
}

/** Writes the facts of a job down. The sheets before stay. */
export function appendSheet(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  sheet: JobSheet & {
    readonly locationId: number | null
    readonly opens: boolean
    readonly initials: string
  },
): void {
  database.run(
    `INSERT INTO job_sheet (job_sheet_id, job, opens, date, location_id, model, brand, made, serial, volts, hertz, watts,
       customer, symptom, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[newId(), sheet.job, sheet.opens ? 1 : 0, sheet.date, sheet.locationId, sheet.model, sheet.brand],
    ...[sheet.made, sheet.serial, sheet.volts, sheet.hertz, sheet.watts, sheet.customer, sheet.symptom],
    ...[now().toISOString(), device, sheet.initials],
  )
}

const openedRow = z.object({ device: z.string() })

/** The machines on which a job of this number was opened, in order of time. */
export function listOpenedOn(database: ReadableDatabase, job: string): string[] {
  return database
    .rows(openedRow, 'SELECT device FROM job_sheet WHERE job = ? AND opens = 1 ORDER BY job_sheet_id', job)
    .map(({ device }) => device)
}

/** Whether anything was ever written of the job here, or only in a file. */
export function hasSheet(database: ReadableDatabase, job: string): boolean {
  const found = database.row(
    z.object({ found: z.int() }),
    'SELECT 1 AS found FROM job_sheet WHERE job = ?',
    job,
  )
  return found !== undefined
}
