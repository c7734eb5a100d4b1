import type { WritableDatabase } from '../database/handles.ts'
import type { Shop } from '../requests/shop.ts'

/** One line of the ledger. A null location is the outside world. */
export interface StockMovement {
  readonly kind: 'receipt' | 'issue' | 'transfer' | 'return' | 'adjustment'
  readonly partId: number
  readonly quantity: number
  readonly fromLocationId: number | null
  readonly toLocationId: number | null
  readonly initials: string
  readonly reason: string
  readonly reference: string | null
}

/** What stamps a movement: its id, the time and the machine. */
export type MovementStamp = Pick<Shop, 'newId' | 'now' | 'device'>

/** Appends one movement to the ledger, from which nothing is ever taken away. Returns its id. */
export function appendMovement(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  movement: StockMovement,
): string {
  const movementId = newId()
  database.run(
    `INSERT INTO movement (movement_id, kind, part_id, quantity, from_location_id, to_location_id, recorded_at, device,
       initials, reason, reference) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    movementId,
    movement.kind,
    movement.partId,
    movement.quantity,
    movement.fromLocationId,
    movement.toLocationId,
    now().toISOString(),
    device,
    movement.initials,
    movement.reason,
    movement.reference,
  )
  return movementId
}
