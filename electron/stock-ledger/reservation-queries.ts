import { z } from 'zod'
import type { Reservation } from '../../shared-schemas/stock-ledger.ts'
import type { Bindable, ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { MovementStamp } from './append-movements.ts'

const reservationRow = z.object({
  reservation_id: z.string(),
  part_number: z.string(),
  location: z.string(),
  quantity: z.int(),
  held_for: z.enum(['job', 'customer']),
  reference: z.string(),
  recorded_at: z.string(),
  initials: z.string(),
})

const isOpen =
  'NOT EXISTS (SELECT 1 FROM reservation_end WHERE reservation_end.reservation_id = reservation.reservation_id)'

export interface ReservationsAsked {
  readonly partId?: number | undefined
  readonly locationId?: number | undefined
  readonly reference?: string | undefined
  readonly reservationId?: string | undefined
}

/** What is kept for somebody now, the oldest first. */
export function listReservations(database: ReadableDatabase, asked: ReservationsAsked): Reservation[] {
  const conditions = (
    [
      ['part_id = ?', asked.partId],
      ['location_id = ?', asked.locationId],
      ['reference = ?', asked.reference],
      ['reservation_id = ?', asked.reservationId],
    ] as const
  ).filter((pair): pair is readonly [string, string | number] & typeof pair => pair[1] !== undefined)
  const where = [isOpen, ...conditions.map(([sql]) => sql)].join(' AND ')
  return database
    .rows(
      reservationRow,
      `SELECT reservation_id, part_number, location, quantity, held_for, reference, recorded_at, initials
       FROM reservation CROSS JOIN part USING (part_id) CROSS JOIN location USING (location_id)
       WHERE ${where} ORDER BY reservation_id`,
      ...conditions.map(([, value]) => value as Bindable),
    )
    .map(row => ({
      reservationId: row.reservation_id,
      partNumber: row.part_number,
      location: row.location,
      quantity: row.quantity,
      heldFor: row.held_for,
      reference: row.reference,
      recordedAt: row.recorded_at,
      initials: row.initials,
    }))
}

export interface NewReservation {
  readonly partId: number
  readonly locationId: number
  readonly quantity: number
  readonly heldFor: 'job' | 'customer'
  readonly reference: string
  readonly initials: string
}

/** Keeps a quantity for a job or a customer. Returns the id. */
export function appendReservation(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  { partId, locationId, quantity, heldFor, reference, initials }: NewReservation,
): string {
  const reservationId = newId()
  database.run(
    `INSERT INTO reservation (reservation_id, part_id, location_id, quantity, held_for, reference, recorded_at, device,
       initials) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[reservationId, partId, locationId, quantity, heldFor, reference],
    ...[now().toISOString(), device, initials],
  )
  return reservationId
}

/** Ends a reservation: the part was taken by whom it was kept for, or is free again. */
export function endReservation(
  database: WritableDatabase,
  { now, device }: MovementStamp,
  { reservationId, how, initials }: { reservationId: string; how: 'taken' | 'released'; initials: string },
): void {
  database.run(
    'INSERT INTO reservation_end (reservation_id, how, recorded_at, device, initials) VALUES (?, ?, ?, ?, ?)',
    ...[reservationId, how, now().toISOString(), device, initials],
  )
}

const keptRow = z.object({ quantity: z.int(), references_kept: z.string().nullable() })

/** How much of a part in one location is kept for others than this reference, and for whom. */
export function readReservedForOthers(
  database: ReadableDatabase,
  { locationId, partId, reference }: { locationId: number; partId: number; reference: string | null },
): { readonly quantity: number; readonly references: string[] } {
  const kept = database.row(
    keptRow,
    `SELECT ifnull(sum(quantity), 0) AS quantity, json_group_array(DISTINCT reference) AS references_kept
     FROM reservation WHERE part_id = ? AND location_id = ? AND reference IS NOT ? AND ${isOpen}`,
    partId,
    locationId,
    reference,
  )
  return { quantity: kept?.quantity ?? 0, references: JSON.parse(kept?.references_kept ?? '[]') }
}

const openRow = z.object({
  reservation_id: z.string(),
  quantity: z.int(),
  held_for: z.enum(['job', 'customer']),
})

/** Ends what was kept for this job or customer as far as it was taken now; the rest stays kept. */
export function takeReserved(
  database: WritableDatabase,
  stamp: MovementStamp,
  taken: { locationId: number; partId: number; reference: string; quantity: number; initials: string },
): void {
  const { locationId, partId, reference, initials } = taken
  const open = database.rows(
    openRow,
    `SELECT reservation_id, quantity, held_for FROM reservation
     WHERE part_id = ? AND location_id = ? AND reference = ? AND ${isOpen} ORDER BY reservation_id`,
    partId,
    locationId,
    reference,
  )
  let left = taken.quantity
  for (const { reservation_id: reservationId, quantity, held_for: heldFor } of open) {
    if (left <= 0) return
    endReservation(database, stamp, { reservationId, how: 'taken', initials })
    if (quantity > left) appendReservation(database, stamp, { ...taken, heldFor, quantity: quantity - left })
    left -= quantity
  }
}

const reservedRow = z.object({ location: z.string(), part_number: z.string(), reserved: z.int() })

/** How much is kept in each place, by location and part number. */
export function readReserved(database: ReadableDatabase): ReadonlyMap<string, number> {
  const rows = database.rows(
    reservedRow,
    `SELECT location, part_number, sum(quantity) AS reserved
     FROM reservation CROSS JOIN part USING (part_id) CROSS JOIN location USING (location_id)
     WHERE ${isOpen} GROUP BY location_id, part_id`,
  )
  return new Map(rows.map(row => [`${row.location}\n${row.part_number}`, row.reserved]))
}
