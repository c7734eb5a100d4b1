import { z } from 'zod'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'

/**
 * Adds the movements since the last balances to them, once there are many. What is on hand is then one balance and a
 * few movements, however long the book has grown.
 */
export function bringForward(database: WritableDatabase, lastArrival: number): void {
  const through = readThrough(database)
  if (lastArrival - through < mostSince) return
  database.run(
    `INSERT INTO brought_forward (location_id, part_id, quantity)
     SELECT location_id, part_id, sum(delta) FROM (
       SELECT to_location_id AS location_id, part_id, quantity AS delta FROM movement
       WHERE arrival > ?1 AND to_location_id IS NOT NULL
       UNION ALL
       SELECT from_location_id, part_id, -quantity FROM movement
       WHERE arrival > ?1 AND from_location_id IS NOT NULL)
     WHERE true GROUP BY location_id, part_id
     ON CONFLICT DO UPDATE SET quantity = quantity + excluded.quantity`,
    through,
  )
  database.run('UPDATE brought_forward_through SET arrival = ?', lastArrival)
}

/** Read in a millisecond or two, and brought forward in ten. */
const mostSince = 2_000

export function readThrough(database: ReadableDatabase): number {
  return database.row(throughRow, 'SELECT arrival FROM brought_forward_through')?.arrival ?? 0
}

const throughRow = z.object({ arrival: z.int() })
