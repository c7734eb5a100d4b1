import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { MovementStamp } from '../stock-ledger/append-movements.ts'
import type { NeedAsked, PartThere } from './reckon-parts.ts'

export interface FoundNeed extends NeedAsked {
  readonly family: string
  readonly familyName: string
  readonly partNumber: string | null
}

const needRow = z.object({
  family_id: z.int(),
  family: z.string(),
  family_name: z.string(),
  part_id: z.int().nullable(),
  part_number: z.string().nullable(),
  quantity: z.int(),
})

/** What the job needs by the last word on each family and part, in the order in which it was first asked for. */
export function listNeeds(database: ReadableDatabase, job: string): FoundNeed[] {
  return database
    .rows(
      needRow,
      `SELECT family.family_id AS family_id, family.family AS family, family.name AS family_name, part.part_id AS part_id,
         part_number, quantity
       FROM (SELECT family_id, part_id, quantity, min(job_need_id) OVER same AS first,
               row_number() OVER (same ORDER BY job_need_id DESC) AS back
             FROM job_need WHERE job = ? WINDOW same AS (PARTITION BY family_id, part_id)) AS need
       LEFT JOIN part ON part.part_id = need.part_id
       JOIN family ON family.family_id = ifnull(need.family_id, part.family_id)
       WHERE back = 1 AND quantity > 0 ORDER BY first`,
      job,
    )
    .map(row => ({
      familyId: row.family_id,
      family: row.family,
      familyName: row.family_name,
      partId: row.part_id,
      partNumber: row.part_number,
      quantity: row.quantity,
    }))
}

export function appendNeed(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  need: {
    readonly job: string
    readonly familyId: number | null
    readonly partId: number | null
    readonly quantity: number
    readonly initials: string
  },
): void {
  database.run(
    `INSERT INTO job_need (job_need_id, job, family_id, part_id, quantity, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[newId(), need.job, need.familyId, need.partId, need.quantity],
    ...[now().toISOString(), device, need.initials],
  )
}

export interface FoundPart extends PartThere {
  readonly partId: PartId
  readonly partNumber: string
  readonly family: string
  readonly description: string
  readonly takenFrom: string | null
}

const partRow = z.object({
  part_id: partId,
  part_number: z.string(),
  family_id: z.int(),
  family: z.string(),
  description: z.string(),
  taken: z.int(),
  brought_back: z.int(),
  fitted: z.int(),
  taken_from: z.string().nullable(),
})

/**
 * Every part that went out for the job, came back or was fitted, with how many. A movement that takes another one back
 * counts against it: a taking that was a mistake was no taking.
 */
export function listJobParts(database: ReadableDatabase, job: string): FoundPart[] {
  return database
    .rows(
      partRow,
      `SELECT part_id, part_number, family_id, family, description, sum(taken) AS taken, sum(brought_back) AS brought_back,
         sum(fitted) AS fitted,
         (SELECT location FROM movement JOIN location ON location_id = from_location_id
          WHERE reference = ?1 AND movement.part_id = went.part_id AND outside = 'job' AND reverses IS NULL
          ORDER BY movement_id DESC LIMIT 1) AS taken_from
       FROM (
         SELECT part_id,
           CASE WHEN reverses IS NULL AND to_location_id IS NULL THEN quantity
             WHEN reverses IS NOT NULL AND from_location_id IS NULL THEN -quantity ELSE 0 END AS taken,
           CASE WHEN reverses IS NULL AND from_location_id IS NULL THEN quantity
             WHEN reverses IS NOT NULL AND to_location_id IS NULL THEN -quantity ELSE 0 END AS brought_back,
           0 AS fitted
         FROM movement WHERE reference = ?1 AND outside = 'job'
         UNION ALL SELECT part_id, 0, 0, quantity FROM job_fitting WHERE job = ?1) AS went
       JOIN part USING (part_id) JOIN family USING (family_id)
       GROUP BY part_id ORDER BY part_number`,
      job,
    )
    .map(row => ({
      partId: row.part_id,
      partNumber: row.part_number,
      familyId: row.family_id,
      family: row.family,
      description: row.description,
      taken: row.taken,
      broughtBack: row.brought_back,
      fitted: row.fitted,
      takenFrom: row.taken_from,
    }))
}

export function appendFitting(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  fitting: {
    readonly job: string
    readonly partId: number
    readonly quantity: number
    readonly initials: string
  },
): void {
  database.run(
    `INSERT INTO job_fitting (job_fitting_id, job, part_id, quantity, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
    ...[newId(), fitting.job, fitting.partId, fitting.quantity],
    ...[now().toISOString(), device, fitting.initials],
  )
}
