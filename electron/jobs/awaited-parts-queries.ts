import type { ReadableDatabase } from '../database/handles.ts'

/**
 * Pieces by part that open jobs need by number and that nobody has taken for them or kept for them yet, by the last word on
 * each need: they must be bought if the shelf has none.
 */
export function readAwaited(database: ReadableDatabase): ReadonlyMap<number, number> {
  return new Map(
    database.tuples<[number, number]>(
      `SELECT part_id, sum(missing) FROM (
         SELECT need.part_id, max(0, need.quantity
           - (SELECT ifnull(sum(CASE WHEN to_location_id IS NULL THEN quantity ELSE -quantity END), 0) FROM movement
              WHERE reference = need.job AND outside = 'job' AND movement.part_id = need.part_id)
           - (SELECT ifnull(sum(quantity), 0) FROM reservation
              WHERE reference = need.job AND held_for = 'job' AND reservation.part_id = need.part_id
                AND NOT EXISTS (SELECT 1 FROM reservation_end AS ended
                  WHERE ended.reservation_id = reservation.reservation_id))) AS missing
         FROM job_need AS need JOIN job USING (job)
         WHERE need.part_id IS NOT NULL AND finished_first_visit IS NULL
           AND NOT EXISTS (SELECT 1 FROM job_need AS later
             WHERE later.job = need.job AND later.part_id = need.part_id AND later.job_need_id > need.job_need_id))
       GROUP BY part_id HAVING sum(missing) > 0`,
    ),
  )
}
