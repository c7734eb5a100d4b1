import { z } from 'zod'
import { decisionWay, type PartReturn, returnKind } from '../../../shared-schemas/returns.ts'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'
import type { MovementStamp } from '../append-movements.ts'

const returnRow = z.object({
  part_return_id: z.string(),
  kind: returnKind,
  part_number: z.string(),
  description: z.string(),
  family: z.string(),
  quantity: z.int(),
  from_place: z.string(),
  reference: z.string().nullable(),
  quarantine: z.string(),
  reason: z.string(),
  recorded_at: z.string(),
  initials: z.string(),
  fit_record_id: z.string().nullable(),
  movement_id: z.string(),
  undecided: z.int(),
})

const decisionRow = z.object({
  part_return_id: z.string(),
  way: decisionWay,
  quantity: z.int(),
  to_place: z.string(),
  reason: z.string(),
  reference: z.string().nullable(),
  recorded_at: z.string(),
  initials: z.string(),
  movement_id: z.string(),
})

/** A movement that was taken back in the ledger takes the return or the decision back that rests on it. */
const stands = (movement: string) =>
  `NOT EXISTS (SELECT 1 FROM movement AS later WHERE later.reverses = ${movement}.movement_id)`

const standingReturns = `SELECT part_return_id, part_return.kind AS kind, part_number, description, family,
    came.quantity AS quantity, ifnull(origin.location, came.outside) AS from_place, came.reference AS reference,
    shelf.location AS quarantine, came.reason AS reason, part_return.recorded_at AS recorded_at,
    part_return.initials AS initials, fit_record_id, came.movement_id AS movement_id,
    came.quantity - ifnull((SELECT sum(went.quantity) FROM return_decision JOIN movement AS went USING (movement_id)
      WHERE return_decision.part_return_id = part_return.part_return_id AND ${stands('went')}), 0) AS undecided
  FROM part_return JOIN movement AS came USING (movement_id) JOIN part USING (part_id) JOIN family USING (family_id)
    JOIN location AS shelf ON shelf.location_id = came.to_location_id
    LEFT JOIN location AS origin ON origin.location_id = came.from_location_id
  WHERE ${stands('came')}`

/** Returns that stand, the latest first. */
export function listReturns(
  database: ReadableDatabase,
  { onlyUndecided, most }: { readonly onlyUndecided: boolean; readonly most: number },
): PartReturn[] {
  const rows = database.rows(
    returnRow,
    `SELECT * FROM (${standingReturns}) WHERE (? = 0 OR undecided > 0) ORDER BY part_return_id DESC LIMIT ?`,
    onlyUndecided ? 1 : 0,
    most,
  )
  return withDecisions(database, rows)
}

export function findReturn(database: ReadableDatabase, returnId: string): PartReturn | undefined {
  const rows = database.rows(returnRow, `${standingReturns} AND part_return_id = ?`, returnId)
  return withDecisions(database, rows)[0]
}

function withDecisions(
  database: ReadableDatabase,
  returns: readonly z.output<typeof returnRow>[],
): PartReturn[] {
  const decisions = Map.groupBy(
    database.rows(
      decisionRow,
      `SELECT part_return_id, way, went.quantity AS quantity, ifnull(target.location, went.outside) AS to_place,
         went.reason AS reason, went.reference AS reference, return_decision.recorded_at AS recorded_at,
         return_decision.initials AS initials, went.movement_id AS movement_id
       FROM json_each(?) AS asked CROSS JOIN return_decision ON part_return_id = asked.value
         JOIN movement AS went USING (movement_id)
         LEFT JOIN location AS target ON target.location_id = went.to_location_id
       WHERE ${stands('went')} ORDER BY return_decision_id`,
      JSON.stringify(returns.map(row => row.part_return_id)),
    ),
    row => row.part_return_id,
  )
  return returns.map(row => ({
    ...{ returnId: row.part_return_id, kind: row.kind, partNumber: row.part_number },
    description: row.description === '' ? row.family : row.description,
    ...{ quantity: row.quantity, undecided: row.undecided, from: row.from_place, reference: row.reference },
    ...{ quarantine: row.quarantine, reason: row.reason, returnedAt: row.recorded_at },
    ...{ initials: row.initials, fitRecordId: row.fit_record_id, movementId: row.movement_id },
    decisions: (decisions.get(row.part_return_id) ?? []).map(decided => ({
      ...{ way: decided.way, quantity: decided.quantity, to: decided.to_place, reason: decided.reason },
      ...{ reference: decided.reference, decidedAt: decided.recorded_at, initials: decided.initials },
      movementId: decided.movement_id,
    })),
  }))
}

export function appendReturn(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  taken: {
    readonly kind: PartReturn['kind']
    readonly movementId: string
    readonly fitRecordId: string | null
    readonly initials: string
  },
): string {
  const returnId = newId()
  database.run(
    `INSERT INTO part_return (part_return_id, kind, movement_id, fit_record_id, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
    ...[returnId, taken.kind, taken.movementId, taken.fitRecordId],
    ...[now().toISOString(), device, taken.initials],
  )
  return returnId
}

export function appendDecision(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  decided: {
    readonly returnId: string
    readonly way: PartReturn['decisions'][number]['way']
    readonly movementId: string
    readonly initials: string
  },
): void {
  database.run(
    `INSERT INTO return_decision (return_decision_id, part_return_id, way, movement_id, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
    ...[newId(), decided.returnId, decided.way, decided.movementId],
    ...[now().toISOString(), device, decided.initials],
  )
}
