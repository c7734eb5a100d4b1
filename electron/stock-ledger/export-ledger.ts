import type { Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { JoiningShop } from './import-ledger.ts'
import { listJoinedRows, readJoinedColumns } from './joined-tables.ts'
import {
  type LedgerLine,
  type MovementLine,
  type ReservationEndLine,
  type ReservationLine,
  writeLedgerFile,
} from './ledger-file.ts'

/** Writes the whole ledger of this machine to a file for another machine of the shop. */
export async function exportLedger(
  { database, device, now, joined }: JoiningShop,
  file: string,
): Promise<Output<'stock-ledger.export-ledger'>> {
  const lines = [
    ...listLines(database),
    ...joined.tables.flatMap(({ table }) => [...listRecords(database, table)]),
  ]
  await writeLedgerFile(file, { device, writtenAt: now().toISOString() }, lines)
  const count = (kind: LedgerLine['line']) => lines.filter(({ line }) => line === kind).length
  return { file, movements: count('movement'), reservations: count('reservation'), records: count('record') }
}

function* listRecords(database: ReadableDatabase, table: string): Generator<LedgerLine> {
  for (const values of listJoinedRows(database, readJoinedColumns(database, table)))
    yield { line: 'record', table, values }
}

type MovementColumns = [
  movementId: string,
  kind: MovementLine['kind'],
  partNumber: string,
  quantity: number,
  from: string | null,
  to: string | null,
  outside: MovementLine['outside'],
  recordedAt: string,
  device: string,
  initials: string,
  reason: string,
  reference: string | null,
  reverses: string | null,
  unitCost: string | null,
  usedBeforeBooked: number,
]

function* listLines(database: ReadableDatabase): Generator<LedgerLine> {
  const movements = database.tuples<MovementColumns>(
    `SELECT movement_id, movement.kind, part_number, quantity, origin.location, target.location, outside, recorded_at, device,
       initials, reason, reference, reverses, unit_cost, used_before_booked
     FROM movement CROSS JOIN part USING (part_id)
       LEFT JOIN location AS origin ON origin.location_id = from_location_id
       LEFT JOIN location AS target ON target.location_id = to_location_id
     ORDER BY arrival`,
  )
  for (const [
    movementId,
    kind,
    partNumber,
    quantity,
    from,
    to,
    outside,
    recordedAt,
    device,
    ...rest
  ] of movements) {
    const [initials, reason, reference, reverses, unitCost, usedBeforeBooked] = rest
    yield {
      ...{ line: 'movement', movementId, kind, partNumber, quantity, from, to, outside, recordedAt, device },
      ...{ initials, reason, reference, reverses, unitCost, usedBeforeBooked: usedBeforeBooked === 1 },
    }
  }
  const reservations = database.tuples<
    [string, string, string, number, ReservationLine['heldFor'], string, string, string, string]
  >(
    `SELECT reservation_id, part_number, location, quantity, held_for, reference, recorded_at, device, initials
     FROM reservation CROSS JOIN part USING (part_id) CROSS JOIN location USING (location_id) ORDER BY reservation_id`,
  )
  for (const [reservationId, partNumber, location, quantity, heldFor, reference, ...stamp] of reservations) {
    const [recordedAt, device, initials] = stamp
    yield {
      ...{ line: 'reservation', reservationId, partNumber, location, quantity, heldFor, reference },
      ...{ recordedAt, device, initials },
    }
  }
  const ends = database.tuples<[string, ReservationEndLine['how'], string, string, string]>(
    'SELECT reservation_id, how, recorded_at, device, initials FROM reservation_end ORDER BY reservation_id',
  )
  for (const [reservationId, how, recordedAt, device, initials] of ends)
    yield { line: 'reservation-end', reservationId, how, recordedAt, device, initials }
}
