import { z } from 'zod'
import type { LedgerConflict } from '../../shared-schemas/stock-ledger.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const conflictRow = z.object({
  kind: z.enum(['moved-before-count', 'counted-twice']),
  location: z.string(),
  part_number: z.string(),
  counted_at: z.string(),
  device: z.string(),
  book_then: z.int(),
  book_now: z.int(),
})

/**
 * Counted here, and moved or counted there without this machine having heard of it. The last reading of each part in each
 * place counts, since a later count settles whatever went wrong in the ones before:
 *
 * - the ledger has another book for the moment of the reading than the one the reading was held against; or
 * - another count of the place was read before it and posted after it, so that one variance was booked twice.
 *
 * Ids stand in the order of their time, so this depends on what is in the book alone, not on the order of its arrival.
 */
export function listCountConflicts(database: ReadableDatabase): LedgerConflict[] {
  return database
    .rows(
      conflictRow,
      `WITH posted AS (
         SELECT location_id, part_id, max(reading_id) AS reading_id
         FROM count_posting CROSS JOIN stock_count USING (count_id) CROSS JOIN count_reading USING (count_id)
         WHERE NOT EXISTS (
           SELECT 1 FROM count_reading_withdrawn AS back WHERE back.reading_id = count_reading.reading_id)
         GROUP BY location_id, part_id),
       last AS (
         SELECT location_id, posted.part_id AS part_id, reading_id, count_id, book AS book_then, recorded_at, device,
           (SELECT ifnull(sum(CASE WHEN to_location_id IS posted.location_id THEN quantity ELSE -quantity END), 0)
            FROM movement WHERE movement.part_id = posted.part_id AND movement_id < reading_id
              AND (to_location_id IS posted.location_id OR from_location_id IS posted.location_id)) AS book_now
         FROM posted CROSS JOIN count_reading USING (reading_id))
       SELECT found.kind AS kind, location, part_number, recorded_at AS counted_at, device, book_then, book_now FROM (
         SELECT 'moved-before-count' AS kind, * FROM last WHERE book_then <> book_now
         UNION ALL
         SELECT 'counted-twice' AS kind, * FROM last WHERE EXISTS (
           SELECT 1 FROM movement AS adjusted
           WHERE adjusted.part_id = last.part_id AND adjusted.movement_id > last.reading_id AND outside = 'count'
             AND last.location_id IN (to_location_id, from_location_id) AND adjusted.reference <> last.count_id
             AND EXISTS (SELECT 1 FROM count_reading AS other WHERE other.count_id = adjusted.reference
               AND other.part_id = last.part_id AND other.reading_id < last.reading_id))) AS found
       JOIN location USING (location_id) JOIN part USING (part_id)
       ORDER BY location, part_number, found.kind`,
    )
    .map(row => ({
      ...{ kind: row.kind, location: row.location, partNumber: row.part_number },
      ...{ countedAt: row.counted_at, device: row.device, bookThen: row.book_then, bookNow: row.book_now },
    }))
}
