import { z } from 'zod'
import type { ReadableDatabase } from '../../electron/database/handles.ts'

/** Every row of every table, to see that nothing has changed. */
export function dumpOf(database: ReadableDatabase): Record<string, unknown[]> {
  const tables = database.rows(
    z.object({ name: z.string() }),
    "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name",
  )
  return Object.fromEntries(tables.map(({ name }) => [name, [...database.tuples(`SELECT * FROM "${name}"`)]]))
}
