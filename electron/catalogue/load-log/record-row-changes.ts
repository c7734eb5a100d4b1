import type { WritableDatabase } from '../../database/handles.ts'
import { type RecordedTable, readColumns, recordedTables } from './recorded-tables.ts'

const changes = [
  { change: 'added', event: 'INSERT', key: 'NEW', before: false },
  { change: 'changed', event: 'UPDATE', key: 'OLD', before: true },
  { change: 'removed', event: 'DELETE', key: 'OLD', before: true },
] as const

/**
 * From here until `stop`, every row of the catalogue that is written on this connection is kept in `load_change` as it
 * was before. Triggers of the connection itself do it, so that no loader of a file can forget to.
 */
export function recordRowChanges(database: WritableDatabase): { readonly stop: () => void } {
  const triggers = recordedTables.flatMap(table => createTriggers(database, table))
  return {
    stop: () => {
      for (const trigger of triggers) database.run(`DROP TRIGGER ${trigger}`)
    },
  }
}

function createTriggers(database: WritableDatabase, table: RecordedTable): string[] {
  const columns = readColumns(database, table)
  const array = (row: string, names: readonly string[]) =>
    `json_array(${names.map(name => `${row}.${name}`).join(', ')})`
  return changes.map(({ change, event, key, before }) => {
    const trigger = `record_${table}_${change}`
    database.run(
      `CREATE TEMP TRIGGER ${trigger} AFTER ${event} ON main.${table} BEGIN
         INSERT INTO load_change (change, table_name, row_key, before) VALUES
           ('${change}', '${table}', ${array(key, columns.key)}, ${before ? array('OLD', columns.all) : 'NULL'});
       END`,
    )
    return trigger
  })
}
