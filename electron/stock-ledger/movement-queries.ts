import { z } from 'zod'
import { type Movement, outsidePlace } from '../../shared-schemas/stock-ledger.ts'
import type { Bindable, ReadableDatabase } from '../database/handles.ts'
import type { StampedMovement } from './append-movements.ts'

const movementKind = z.enum(['receipt', 'issue', 'transfer', 'return', 'adjustment'])

const storedRow = z.object({
  movement_id: z.string(),
  kind: movementKind,
  part_id: z.int(),
  quantity: z.int(),
  from_location_id: z.int().nullable(),
  to_location_id: z.int().nullable(),
  outside: outsidePlace.nullable(),
  recorded_at: z.string(),
  device: z.string(),
  initials: z.string(),
  reason: z.string(),
  reference: z.string().nullable(),
  reverses: z.string().nullable(),
  unit_cost: z.string().nullable(),
  used_before_booked: z.int(),
  reversed_by: z.string().nullable(),
})

export interface StoredMovement extends StampedMovement {
  readonly reversedBy: string | null
}

/** A movement as the book has it. */
export function findStoredMovement(
  database: ReadableDatabase,
  movementId: string,
): StoredMovement | undefined {
  const row = database.row(
    storedRow,
    `SELECT movement.*, (SELECT later.movement_id FROM movement AS later WHERE later.reverses = movement.movement_id)
       AS reversed_by
     FROM movement WHERE movement_id = ?`,
    movementId,
  )
  if (row === undefined) return undefined
  return {
    movementId: row.movement_id,
    kind: row.kind,
    partId: row.part_id,
    quantity: row.quantity,
    fromLocationId: row.from_location_id,
    toLocationId: row.to_location_id,
    outside: row.outside,
    recordedAt: row.recorded_at,
    device: row.device,
    initials: row.initials,
    reason: row.reason,
    reference: row.reference,
    reverses: row.reverses,
    unitCost: row.unit_cost,
    usedBeforeBooked: row.used_before_booked === 1,
    reversedBy: row.reversed_by,
  }
}

const readableRow = storedRow.omit({ part_id: true, from_location_id: true, to_location_id: true }).extend({
  part_number: z.string(),
  from_location: z.string().nullable(),
  to_location: z.string().nullable(),
})

const readable = `SELECT movement.*, part_number, origin.location AS from_location, target.location AS to_location,
    (SELECT later.movement_id FROM movement AS later WHERE later.reverses = movement.movement_id) AS reversed_by
  FROM movement CROSS JOIN part USING (part_id)
    LEFT JOIN location AS origin ON origin.location_id = from_location_id
    LEFT JOIN location AS target ON target.location_id = to_location_id`

/** A movement as people read it. */
export function readMovement(database: ReadableDatabase, movementId: string): Movement {
  const row = database.row(readableRow, `${readable} WHERE movement_id = ?`, movementId)
  if (row === undefined)
    throw new Error(`a movement that was just recorded is there, but ${movementId} is not`)
  return asMovement(row)
}

function asMovement(row: z.output<typeof readableRow>): Movement {
  return {
    movementId: row.movement_id,
    recordedAt: row.recorded_at,
    device: row.device,
    initials: row.initials,
    partNumber: row.part_number,
    quantity: row.quantity,
    kind: row.kind,
    from: row.from_location ?? row.outside ?? '',
    to: row.to_location ?? row.outside ?? '',
    reason: row.reason,
    reference: row.reference,
    unitCost: row.unit_cost,
    usedBeforeBooked: row.used_before_booked === 1,
    reverses: row.reverses,
    reversedBy: row.reversed_by,
  }
}

export interface LedgerAsked {
  readonly partId: number | null
  readonly locationId: number | null
  readonly before: string | null
  readonly most: number
}

export interface ListedMovement extends Movement {
  /** Whether it came from outside the shop, or went there; neither is a transfer. */
  readonly crosses: 'in' | 'out' | null
}

/** The movements of a part, of a place or of both, the latest first. UUIDv7 ids stand in the order of their time. */
export function listMovements(database: ReadableDatabase, asked: LedgerAsked): ListedMovement[] {
  const { partId, locationId, before, most } = asked
  const conditions: [sql: string, value: Bindable][] = []
  if (partId !== null) conditions.push(['part_id = ?', partId])
  if (before !== null) conditions.push(['movement_id < ?', before])
  const idsWhere = (more: readonly string[]) => {
    const where = [...conditions.map(([sql]) => sql), ...more].join(' AND ') || 'true'
    return `SELECT movement_id FROM movement WHERE ${where} ORDER BY movement_id DESC LIMIT ${most}`
  }
  const bound = conditions.map(([, value]) => value)
  const [left, came] = [idsWhere(['from_location_id = ?']), idsWhere(['to_location_id = ?'])]
  const ids =
    locationId === null
      ? { sql: idsWhere([]), bound }
      : {
          sql: `SELECT movement_id FROM (${left}) UNION SELECT movement_id FROM (${came})`,
          bound: [...bound, locationId, ...bound, locationId],
        }
  return database
    .rows(
      readableRow,
      `${readable} WHERE movement_id IN (${ids.sql}) ORDER BY movement_id DESC LIMIT ${most}`,
      ...ids.bound,
    )
    .map(row => ({ ...asMovement(row), crosses: crossing(row) }))
}

function crossing(row: z.output<typeof readableRow>): ListedMovement['crosses'] {
  if (row.kind === 'transfer') return null
  return row.from_location === null ? 'in' : 'out'
}
