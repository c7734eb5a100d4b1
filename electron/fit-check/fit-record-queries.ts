import { z } from 'zod'
import { type ModelId, modelId, type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { FitRecord, Settled } from './fit-record.ts'

const recordRow = z.object({
  record_id: z.string(),
  kind: z.enum(['confirmed', 'wrong-fit']),
  model_id: modelId,
  brand: z.string(),
  model_number: z.string(),
  part_id: partId,
  part_number: z.string(),
  job: z.string().nullable(),
  reason: z.string().nullable(),
  initials: z.string(),
  recorded_at: z.string(),
  how: z.string().nullable(),
  settled_by: z.string().nullable(),
  settled_at: z.string().nullable(),
})

const recordColumns = `fit_record.record_id AS record_id, fit_record.kind AS kind, model_id, brand.name AS brand,
       model_number, part_id, part_number, job, reason, fit_record.initials AS initials, recorded_at, how,
       fit_record_settled.initials AS settled_by, settled_at`

const withNames = `JOIN model USING (model_id) JOIN brand USING (brand_id) JOIN part USING (part_id)
  LEFT JOIN fit_record_settled ON fit_record_settled.record_id = fit_record.record_id`

/** Everything recorded of these parts, in whatever model, in order of time. */
export function listFitRecords(database: ReadableDatabase, partIds: readonly PartId[]): FitRecord[] {
  return database
    .rows(
      recordRow,
      `SELECT ${recordColumns}
       FROM json_each(?) AS asked CROSS JOIN fit_record ON part_id = asked.value ${withNames}
       ORDER BY recorded_at, fit_record.record_id`,
      JSON.stringify(partIds),
    )
    .map(asRecord)
}

export function findFitRecord(database: ReadableDatabase, recordId: string): FitRecord | undefined {
  const found = database.row(
    recordRow,
    `SELECT ${recordColumns} FROM fit_record ${withNames} WHERE fit_record.record_id = ?`,
    recordId,
  )
  return found && asRecord(found)
}

function asRecord(row: z.output<typeof recordRow>): FitRecord {
  const { how, settled_by, settled_at } = row
  const isSettled = how !== null && settled_by !== null && settled_at !== null
  return {
    recordId: row.record_id,
    kind: row.kind,
    modelId: row.model_id,
    brand: row.brand,
    modelNumber: row.model_number,
    partId: row.part_id,
    partNumber: row.part_number,
    job: row.job,
    reason: row.reason,
    initials: row.initials,
    at: row.recorded_at,
    settled: isSettled ? { how, initials: settled_by, at: settled_at } : null,
  }
}

export interface NewFitRecord
  extends Pick<FitRecord, 'recordId' | 'kind' | 'job' | 'reason' | 'initials' | 'at'> {
  readonly modelId: ModelId
  readonly partId: PartId
}

export function appendFitRecord(database: WritableDatabase, record: NewFitRecord): void {
  database.run(
    `INSERT INTO fit_record (record_id, kind, model_id, part_id, job, reason, initials, recorded_at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    record.recordId,
    record.kind,
    record.modelId,
    record.partId,
    record.job,
    record.reason,
    record.initials,
    record.at,
  )
}

export function appendSettled(
  database: WritableDatabase,
  recordId: string,
  { how, initials, at }: Settled,
): void {
  database.run(
    'INSERT INTO fit_record_settled (record_id, how, initials, settled_at) VALUES (?, ?, ?, ?)',
    recordId,
    how,
    initials,
    at,
  )
}

/** Records made on any machine of the shop go to the others with its ledger. Settled twice is settled. */
export const joinedFitTables = [
  { table: 'fit_record' },
  { table: 'fit_record_settled', mayBeTwice: true },
] as const
