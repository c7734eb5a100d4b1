import { setImmediate } from 'node:timers/promises'
import type { Output } from '../../../shared-schemas/index.ts'
import type { Bindable, WritableDatabase } from '../../database/handles.ts'
import type { Task } from '../../requests/handlers.ts'
import type { RecordOpeningStock } from '../loading/catalogue-file.ts'
import type { ChangeSpan } from './load-log-queries.ts'
import { type RecordedTable, readColumns, recordedTables, type TableColumns } from './recorded-tables.ts'

interface Restoring {
  readonly recordOpeningStock: RecordOpeningStock
  readonly task: Task
}

type Restored = Pick<Output<'catalogue.undo-load'>, 'restored' | 'kept'>

/**
 * Takes row changes back, the last first, so that each meets the row as it left it. A row that was added and is named
 * since by something that nobody may take back, such as a movement, stays, and so do the rows that it needs.
 */
export async function restoreRows(
  database: WritableDatabase,
  { first, last }: ChangeSpan,
  { recordOpeningStock, task }: Restoring,
): Promise<Restored> {
  const columns = new Map(recordedTables.map(table => [table, readColumns(database, table)]))
  const kept = new Map<string, number>()
  let restored = 0
  for (let at = last; at >= first; at -= atOnce) {
    for (const change of readChanges(database, Math.max(first, at - atOnce + 1), at)) {
      if (change.table === 'opening_stock') bookBack(database, change, recordOpeningStock)
      if (restoreRow(database, change, columns.get(change.table) as TableColumns)) restored += 1
      else kept.set(change.table, (kept.get(change.table) ?? 0) + 1)
    }
    task.report({ what: 'rows', done: last - at + 1, expected: last - first + 1 })
    await setImmediate()
  }
  return { restored, kept: [...kept].map(([table, rows]) => ({ table, rows })) }
}

/** So few that other questions are answered between them. */
const atOnce = 2_000

interface Change {
  readonly table: RecordedTable
  readonly change: 'added' | 'changed' | 'removed'
  readonly key: readonly Bindable[]
  readonly before: readonly Bindable[]
}

function readChanges(database: WritableDatabase, first: number, last: number): Change[] {
  const rows = database.tuples<[RecordedTable, Change['change'], string, string | null]>(
    `SELECT table_name, change, row_key, before FROM load_change
     WHERE change_id BETWEEN ? AND ? ORDER BY change_id DESC`,
    first,
    last,
  )
  return Array.from(rows, ([table, change, key, before]) => ({
    table,
    change,
    key: JSON.parse(key),
    before: before === null ? [] : JSON.parse(before),
  }))
}

/** False where the row stays because something else names it. */
function restoreRow(database: WritableDatabase, change: Change, { all, key }: TableColumns): boolean {
  const where = `WHERE ${key.map(name => `${name} = ?`).join(' AND ')}`
  switch (change.change) {
    case 'added':
      return removeUnlessNamed(database, `DELETE FROM ${change.table} ${where}`, change.key)
    case 'changed':
      database.run(
        `UPDATE ${change.table} SET ${all.map(name => `${name} = ?`).join(', ')} ${where}`,
        ...change.before,
        ...change.key,
      )
      return true
    case 'removed':
      database.run(
        `INSERT INTO ${change.table} (${all.join(', ')}) VALUES (${all.map(() => '?').join(', ')})`,
        ...change.before,
      )
      return true
  }
}

function removeUnlessNamed(database: WritableDatabase, sql: string, key: readonly Bindable[]): boolean {
  try {
    database.run(sql, ...key)
    return true
  } catch (thrown) {
    const isNamed =
      thrown instanceof Error && 'code' in thrown && thrown.code === 'SQLITE_CONSTRAINT_FOREIGNKEY'
    if (isNamed) return false
    throw thrown
  }
}

/** The ledger is moved by what the statement of opening stock loses, as a load would. */
function bookBack(
  database: WritableDatabase,
  { key, before }: Change,
  recordOpeningStock: RecordOpeningStock,
): void {
  const [locationId, partId] = key.map(Number) as [number, number]
  const [now] = [
    ...database.tuples<[number]>(
      'SELECT quantity FROM opening_stock WHERE location_id = ? AND part_id = ?',
      locationId,
      partId,
    ),
  ]
  // Columns of the table in its order: location, part, quantity, bin.
  recordOpeningStock(database, { locationId, partId, before: now?.[0] ?? null, now: Number(before[2] ?? 0) })
}
