import { z } from 'zod'
import type { Bindable, WritableDatabase } from '../../database/handles.ts'

const idRow = z.object({ id: z.int() })

/** Runs an INSERT … ON CONFLICT DO UPDATE … RETURNING id, and gives the id of the row whether it is new or not. */
export function upsert(database: WritableDatabase, sql: string, ...bound: readonly Bindable[]): number {
  const written = database.row(idRow, sql, ...bound)
  if (written === undefined) throw new Error('an upsert returns the row that it wrote')
  return written.id
}
