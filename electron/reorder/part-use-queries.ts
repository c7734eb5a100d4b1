import { z } from 'zod'
import type { PartUse } from '../../shared-schemas/reorder-settings.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { oneOffs } from './demand/demand-queries.ts'

const useRow = z.object({
  date: z.string(),
  reference: z.string(),
  quantity: z.int(),
  is_one_off: z.int(),
})

/**
 * What jobs and customers took of a part in the year up to now, by day and reference, the latest first: by imported usage
 * and by the ledger, where what was reversed counts on its own day. What came to nothing is left out.
 */
export function listUses(database: ReadableDatabase, partId: number, now: Date): PartUse[] {
  return database
    .rows(
      useRow,
      `SELECT date, reference, sum(pieces) AS quantity, reference IN (${oneOffs}) AS is_one_off
       FROM (
         SELECT date, job AS reference, quantity AS pieces FROM usage WHERE part_id = ?1
         UNION ALL
         SELECT date(ifnull(reversed.recorded_at, movement.recorded_at), 'localtime'),
           ifnull(movement.reference, ''),
           CASE WHEN movement.from_location_id IS NULL THEN -movement.quantity ELSE movement.quantity END
         FROM movement LEFT JOIN movement AS reversed ON reversed.movement_id = movement.reverses
         WHERE movement.part_id = ?1 AND movement.outside IN ('job', 'customer'))
       WHERE date > date(?2, 'localtime', '-1 year')
       GROUP BY date, reference HAVING sum(pieces) <> 0
       ORDER BY date DESC, reference`,
      partId,
      now.toISOString(),
    )
    .map(({ is_one_off: isOneOff, ...use }) => ({ ...use, isOneOff: isOneOff === 1 }))
}
