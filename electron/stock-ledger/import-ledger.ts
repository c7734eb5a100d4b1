import { z } from 'zod'
import type { Output } from '../../shared-schemas/index.ts'
import type { LedgerConflict } from '../../shared-schemas/stock-ledger.ts'
import { findPartByNumber } from '../catalogue/part-queries.ts'
import { inTransaction, type ReadableDatabase, type WritableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { appendStamped } from './append-movements.ts'
import {
  asStoredRow,
  type JoinedColumns,
  type JoinedNames,
  type JoinedTable,
  readJoinedColumns,
} from './joined-tables.ts'
import { type LedgerLine, type MovementLine, type RecordLine, readLedgerFile } from './ledger-file.ts'
import { listLocations } from './location-queries.ts'
import { findStoredMovement, type StoredMovement } from './movement-queries.ts'
import { listOnHand } from './on-hand-queries.ts'
import type { RecordingShop } from './record-movement.ts'
import { takeJoinedRow } from './take-joined-row.ts'

/** What is joined besides movements and reservations: handed in by `application.ts`, since each capability has its own. */
export interface JoiningShop extends RecordingShop {
  readonly joined: {
    readonly tables: readonly JoinedTable[]
    /** Writes out of what was joined whatever is written out of it on every machine. */
    readonly settle: (database: WritableDatabase, lines: readonly RecordLine[]) => void
    readonly listConflicts: (database: ReadableDatabase) => LedgerConflict[]
  }
}

/**
 * Takes in what another machine recorded: the union by ids, so that order and repetition do not matter. All of it, or
 * nothing where a line names a part or a place that is not here, or says otherwise than the same id here.
 */
export async function importLedger(
  { database: handle, joined }: JoiningShop,
  file: string,
): Promise<Output<'stock-ledger.import-ledger'>> {
  const lines = await readLedgerFile(file)
  return inTransaction(handle, database => {
    const names = new Names(database, file)
    const records = new Records(database, joined.tables, names)
    const counted = { movements: 0, alreadyHere: 0, reservations: 0, records: 0 }
    // A reversal names what it reverses, and a reservation's end the reservation; either may stand later in the file.
    database.run('PRAGMA defer_foreign_keys = ON')
    for (const line of lines) {
      const isNew = line.line === 'record' ? records.take(line) : takeLine(database, names, line)
      if (!isNew) counted.alreadyHere += 1
      else if (line.line === 'movement') counted.movements += 1
      else if (line.line === 'reservation') counted.reservations += 1
      else if (line.line === 'record') counted.records += 1
    }
    joined.settle(database, records.taken)
    const belowZero = listOnHand(database, { locationId: null, partId: null, before: null })
      .filter(({ quantity }) => quantity < 0)
      .map(({ location, partNumber, quantity }) => ({ location, partNumber, quantity }))
    return { ...counted, belowZero, conflicts: joined.listConflicts(database) }
  })
}

/** False where this very line is here already. */
function takeLine(database: WritableDatabase, names: Names, line: Exclude<LedgerLine, RecordLine>): boolean {
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

/** The rows of a file that go into the joined tables. */
class Records {
  readonly taken: RecordLine[] = []
  readonly #database: WritableDatabase
  readonly #names: Names
  readonly #tables: ReadonlyMap<string, { readonly table: JoinedTable; readonly columns: JoinedColumns }>

  constructor(database: WritableDatabase, tables: readonly JoinedTable[], names: Names) {
    this.#database = database
    this.#names = names
    this.#tables = new Map(
      tables.map(table => [table.table, { table, columns: readJoinedColumns(database, table.table) }]),
    )
  }

  /** False where this very row is here already. */
  take(line: RecordLine): boolean {
    const { file } = this.#names
    const known = this.#tables.get(line.table)
    const row = known && asStoredRow(known.columns, line.values, this.#names)
    if (known === undefined || row === undefined)
      throw new Refusal({
        code: 'file-unreadable',
        file,
        why: `it has a record of ${line.table} that this version does not know; update Tallyplate here`,
      })
    const joined = takeJoinedRow(this.#database, known.table, known.columns, row)
    if (joined === 'told-otherwise')
      throw new Refusal({ code: 'record-told-otherwise', file, id: String(line.values[known.columns.key]) })
    if (joined === 'new') this.taken.push(line)
    return joined === 'new'
  }
}

/** Parts, places, families and models by the names that the file uses. */
class Names implements JoinedNames {
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

  family(name: string): number {
    const id = this.#find('SELECT family_id AS id FROM family WHERE family = ?', name)
    if (id === undefined) throw this.#unknown('family', name)
    return id
  }

  model(brand: string, modelNumber: string): number {
    const id = this.#find(
      `SELECT model_id AS id FROM model JOIN brand USING (brand_id) WHERE brand.name = ? AND model_number = ?`,
      ...[brand, modelNumber],
    )
    if (id === undefined) throw this.#unknown('model', `${brand} ${modelNumber}`)
    return id
  }

  #find(sql: string, ...bound: string[]): number | undefined {
    return this.#database.row(idRow, sql, ...bound)?.id
  }

  #unknown(what: 'location' | 'part' | 'family' | 'model', name: string): Refusal {
    return new Refusal({ code: 'ledger-names-unknown', file: this.file, what, name })
  }
}

const idRow = z.object({ id: z.int() })
