import type { ReadableDatabase } from '../database/handles.ts'
import type { CountFacts } from './propose-explanations.ts'

/**
 * What may explain the variances of these parts in a location: everything that happened there since `since`, the moment
 * of its last count.
 */
export function readCountFacts(
  database: ReadableDatabase,
  locationId: number,
  { partIds, since }: { readonly partIds: readonly number[]; readonly since: string },
): CountFacts {
  const asked = JSON.stringify(partIds)
  return {
    replaced: listReplaced(database, asked),
    unbookedJobs: listUnbookedJobs(database, locationId, since),
    transfers: listTransfers(database, locationId, { asked, since }),
    packs: groupNumbers(
      database.tuples<[number, number]>(
        'SELECT DISTINCT part_id, pack FROM json_each(?) AS asked CROSS JOIN offer ON part_id = asked.value WHERE pack > 1',
        asked,
      ),
    ),
    receipts: groupNumbers(
      database.tuples<[number, number]>(
        `SELECT part_id, quantity FROM json_each(?1) AS asked CROSS JOIN movement ON part_id = asked.value
         WHERE to_location_id = ?2 AND kind = 'receipt' AND outside = 'supplier' AND recorded_at >= ?3`,
        asked,
        locationId,
        since,
      ),
    ),
  }
}

function listReplaced(database: ReadableDatabase, asked: string): CountFacts['replaced'] {
  return Array.from(
    database.tuples<[number, number]>(
      `SELECT old_part_id, new_part_id FROM supersession
       WHERE old_part_id IN (SELECT value FROM json_each(?1)) AND new_part_id IN (SELECT value FROM json_each(?1))`,
      asked,
    ),
    ([one, other]) => ({ one, other }),
  )
}

/** A job is booked for a family when any part of it was issued with the job's number. */
function listUnbookedJobs(
  database: ReadableDatabase,
  locationId: number,
  since: string,
): CountFacts['unbookedJobs'] {
  return Array.from(
    database.tuples<[string, string, number]>(
      `SELECT job.job, job.date, family_id FROM job CROSS JOIN job_family USING (job)
       WHERE job.location_id = ?1 AND job.date >= substr(?2, 1, 10)
         AND NOT EXISTS (
           SELECT 1 FROM movement CROSS JOIN part USING (part_id)
           WHERE movement.reference = job.job AND part.family_id = job_family.family_id AND movement.kind = 'issue')
         AND NOT EXISTS (
           SELECT 1 FROM usage CROSS JOIN part USING (part_id)
           WHERE usage.job = job.job AND usage.date = job.date AND part.family_id = job_family.family_id)
       ORDER BY job.date, job.job`,
      locationId,
      since,
    ),
    ([job, date, familyId]) => ({ job, date, familyId }),
  )
}

function listTransfers(
  database: ReadableDatabase,
  locationId: number,
  { asked, since }: { readonly asked: string; readonly since: string },
): CountFacts['transfers'] {
  return Array.from(
    database.tuples<[string, number, number, string]>(
      `SELECT movement_id, part_id, CASE WHEN to_location_id = ?2 THEN quantity ELSE -quantity END, other.location
       FROM json_each(?1) AS asked CROSS JOIN movement ON part_id = asked.value
         JOIN location AS other ON other.location_id = CASE WHEN to_location_id = ?2 THEN from_location_id
           ELSE to_location_id END
       WHERE movement.kind = 'transfer' AND ?2 IN (from_location_id, to_location_id) AND recorded_at >= ?3
         -- The plus keeps SQLite from looking for all that reverse nothing, which is nearly all.
         AND +reverses IS NULL
         AND NOT EXISTS (SELECT 1 FROM movement AS later WHERE later.reverses = movement.movement_id)
       ORDER BY movement_id DESC`,
      asked,
      locationId,
      since,
    ),
    ([movementId, partId, pieces, otherPlace]) => ({ movementId, partId, pieces, otherPlace }),
  )
}

function groupNumbers(rows: Iterable<readonly [number, number]>): ReadonlyMap<number, readonly number[]> {
  const groups = new Map<number, number[]>()
  for (const [key, value] of rows) {
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [value])
    else group.push(value)
  }
  return groups
}
