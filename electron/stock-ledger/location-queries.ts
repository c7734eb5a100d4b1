import { z } from 'zod'
import type { ReadableDatabase } from '../database/handles.ts'

const locationRow = z.object({
  location_id: z.int(),
  location: z.string(),
  kind: z.enum(['shop', 'van', 'quarantine']),
  name: z.string(),
})

/** Every place of the shop where parts can be, the shop's shelves first, then the vans. */
export function listLocations(database: ReadableDatabase) {
  return database
    .rows(
      locationRow,
      `SELECT location_id, location, kind, name FROM location
       ORDER BY CASE kind WHEN 'shop' THEN 0 WHEN 'van' THEN 1 ELSE 2 END, location`,
    )
    .map(({ location_id, ...rest }) => ({ locationId: location_id, ...rest }))
}
