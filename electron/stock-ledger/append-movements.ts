import type { OutsidePlace } from '../../shared-schemas/stock-ledger.ts'
import type { WritableDatabase } from '../database/handles.ts'
import type { Shop } from '../requests/shop.ts'
import { bringForward } from './bring-forward.ts'
import type { MovementKind } from './places.ts'

/** One line of the ledger. A null location is the outside world, and `outside` says which part of it. */
export interface StockMovement {
  readonly kind: MovementKind
  readonly partId: number
  readonly quantity: number
  readonly fromLocationId: number | null
  readonly toLocationId: number | null
  readonly outside: OutsidePlace | null
  readonly initials: string
  readonly reason: string
  readonly reference: string | null
  readonly reverses: string | null
  readonly unitCost: string | null
  readonly usedBeforeBooked: boolean
}

export interface StampedMovement extends StockMovement {
  readonly movementId: string
  readonly recordedAt: string
  readonly device: string
}

/** What stamps a movement: its id, the time and the machine. */
export type MovementStamp = Pick<Shop, 'newId' | 'now' | 'device'>

/** What most movements do not say. */
export const plainMovement = {
  reference: null,
  reverses: null,
  unitCost: null,
  usedBeforeBooked: false,
} as const

/** Appends one movement to the ledger, from which nothing is ever taken away. Returns its id. */
export function appendMovement(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  movement: StockMovement,
): string {
  const movementId = newId()
  appendStamped(database, { ...movement, movementId, recordedAt: now().toISOString(), device })
  return movementId
}

/** Appends a movement as another machine stamped it. */
export function appendStamped(database: WritableDatabase, movement: StampedMovement): void {
  const { lastId } = database.run(
    `INSERT INTO movement (movement_id, kind, part_id, quantity, from_location_id, to_location_id, outside, recorded_at,
       device, initials, reason, reference, reverses, unit_cost, used_before_booked)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    movement.movementId,
    movement.kind,
    movement.partId,
    movement.quantity,
    movement.fromLocationId,
    movement.toLocationId,
    movement.outside,
    movement.recordedAt,
    movement.device,
    movement.initials,
    movement.reason,
    movement.reference,
    movement.reverses,
    movement.unitCost,
    movement.usedBeforeBooked ? 1 : 0,
  )
  bringForward(database, lastId)
}
