import type { Output } from '../../shared-schemas/index.ts'
import { findPartByNumber } from '../catalogue/part-queries.ts'
import { inTransaction, type WritableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { appendStamped } from './append-movements.ts'
import { type LedgerLine, type MovementLine, readLedgerFile } from './ledger-file.ts'
import { listLocations } from './location-queries.ts'
import { findStoredMovement, type StoredMovement } from './movement-queries.ts'
import { listOnHand } from './on-hand-queries.ts'
import type { RecordingShop } from './record-movement.ts'

/**
 * Takes in what another machine recorded: the union by ids, so that order and repetition do not matter. All of it, or
 * nothing where a line names a part or a place that is not here, or says otherwise than the same id here.
 */
export async function importLedger(
  { database: handle }: RecordingShop,
  file: string,
): Promise<Output<'stock-ledger.import-ledger'>> {
  const lines = await readLedgerFile(file)
  return inTransaction(handle, database => {
    const names = new Names(database, file)
    const counted = { movements: 0, alreadyHere: 0, reservations: 0 }
    // A reversal names what it reverses, and a reservation's end the reservation; either may stand later in the file.
    database.run('PRAGMA defer_foreign_keys = ON')
    for (const line of lines) {
      const isNew = takeLine(database, names, line)
      if (!isNew) counted.alreadyHere += 1
      else if (line.line === 'movement') counted.movements += 1
      else if (line.line === 'reservation') counted.reservations += 1
    }
    const belowZero = listOnHand(database, { locationId: null, partId: null, before: null })
      .filter(({ quantity }) => quantity < 0)
      .map(({ location, partNumber, quantity }) => ({ location, partNumber, quantity }))
    return { ...counted, belowZero }
  })
}

/** False where this very line is here already. */
function takeLine(database: WritableDatabase, names: Names, line: LedgerLine): boolean {
  switch (line.line) {
    case 'movement':
      return takeMovement(database, names, line)
    case 'reservation':
      return (
        database.run(
          `INSERT INTO reservation (reservation_id, part_id, location_id, quantity, held_for, reference, recorded_at,
             device, initials) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
          ...[line.reservationId, names.part(line.partNumber), names.location(line.location), line.quantity],
          ...[line.heldFor, line.reference, line.recordedAt, line.device, line.initials],
        ).changes > 0
      )
    case 'reservation-end':
      // Two machines may each have ended it; the first that arrived stands, and it has ended either way.
      return (
        database.run(
          `INSERT INTO reservation_end (reservation_id, how, recorded_at, device, initials) VALUES (?, ?, ?, ?, ?)
           ON CONFLICT DO NOTHING`,
          ...[line.reservationId, line.how, line.recordedAt, line.device, line.initials],
        ).changes > 0
      )
  }
}

function takeMovement(database: WritableDatabase, names: Names, line: MovementLine): boolean {
  const { from, to, partNumber, line: _, ...rest } = line
  const movement = {
    ...rest,
    partId: names.part(partNumber),
    fromLocationId: from === null ? null : names.location(from),
    toLocationId: to === null ? null : names.location(to),
  }
  const here = findStoredMovement(database, line.movementId)
  if (here === undefined) appendStamped(database, movement)
  else if (!isSame(here, movement))
    throw new Refusal({ code: 'movement-told-otherwise', file: names.file, movementId: line.movementId })
  return here === undefined
}

function isSame(
  { reversedBy: _, ...here }: StoredMovement,
  there: Omit<StoredMovement, 'reversedBy'>,
): boolean {
  return (Object.keys(here) as (keyof typeof here)[]).every(key => here[key] === there[key])
}

/** Parts and locations by the names that the file uses. */
class Names {
  readonly file: string
  readonly #database: WritableDatabase
  readonly #locations: ReadonlyMap<string, number>
  readonly #parts = new Map<string, number>()

  constructor(database: WritableDatabase, file: string) {
    this.file = file
    this.#database = database
    this.#locations = new Map(
      listLocations(database).map(({ location, locationId }) => [location, locationId]),
    )
  }

  location(name: string): number {
    const id = this.#locations.get(name)
    if (id === undefined) throw this.#unknown('location', name)
    return id
  }

  part(number: string): number {
    const id = this.#parts.get(number) ?? findPartByNumber(this.#database, number)?.partId
    if (id === undefined) throw this.#unknown('part', number)
    this.#parts.set(number, id)
    return id
  }

  #unknown(what: 'location' | 'part', name: string): Refusal {
    return new Refusal({ code: 'ledger-names-unknown', file: this.file, what, name })
  }
}
