import type { Bindable, WritableDatabase } from '../database/handles.ts'
import type { JoinedColumns, JoinedTable } from './joined-tables.ts'

export type Joined = 'new' | 'here' | 'told-otherwise'

/** Puts a row of another machine beside those that are here, unless it is here already. */
export function takeJoinedRow(
  database: WritableDatabase,
  { mayBeTwice }: JoinedTable,
  { table, key, columns }: JoinedColumns,
  row: readonly Bindable[],
): Joined {
  const names = columns.map(({ name }) => name)
  const { changes } = database.run(
    `INSERT INTO ${table} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')}) ON CONFLICT DO NOTHING`,
    ...row,
  )
  if (changes > 0) return 'new'
  if (mayBeTwice) return 'here'
  const [here] = database.tuples<Bindable[]>(
    `SELECT ${names.join(', ')} FROM ${table} WHERE ${key} = ?`,
    row[names.indexOf(key)] ?? null,
  )
  return here?.every((value, at) => value === row[at]) ? 'here' : 'told-otherwise'
}
