import type { ReadableDatabase } from '../../database/handles.ts'
import type { DayNumber } from './time-buckets.ts'

/** Pieces of a part that were used at a place on a day; below 0 what came back. */
export type UsedOnDay = readonly [partId: number, locationId: number, day: DayNumber, quantity: number]

/** Jobs that were marked as one-off and not unmarked since. */
export const oneOffs = `SELECT reference FROM one_off_mark AS mark WHERE is_one_off = 1
  AND NOT EXISTS (SELECT 1 FROM one_off_mark AS later WHERE later.reference = mark.reference AND later.mark_id > mark.mark_id)`

const dayOf = (date: string) => `unixepoch(${date}) / 86400`

/** What imported history says was used, up to a day and without one-off jobs. */
export function readUsage(database: ReadableDatabase, asOf: string): IterableIterator<UsedOnDay> {
  return database.tuples<[number, number, number, number]>(
    `SELECT part_id, location_id, ${dayOf('date')}, sum(quantity) FROM usage
     WHERE date <= ? AND (job = '' OR job NOT IN (${oneOffs}))
     GROUP BY part_id, date, location_id`,
    asOf,
  )
}

/**
 * What the ledger says went to jobs and customers, less what came back, up to the end of a day and without one-off jobs.
 * What was taken back by a reversal counts on the day of what it reverses, as if it had not been.
 */
export function readIssued(database: ReadableDatabase, asOf: string): IterableIterator<UsedOnDay> {
  return database.tuples<[number, number, number, number]>(
    `SELECT movement.part_id, ifnull(movement.from_location_id, movement.to_location_id) AS location_id,
       ${dayOf("date(ifnull(reversed.recorded_at, movement.recorded_at), 'localtime')")} AS day,
       sum(CASE WHEN movement.from_location_id IS NULL THEN -movement.quantity ELSE movement.quantity END)
     FROM movement LEFT JOIN movement AS reversed ON reversed.movement_id = movement.reverses
     WHERE movement.outside IN ('job', 'customer') AND date(movement.recorded_at, 'localtime') <= ?
       AND (movement.reference IS NULL OR movement.reference NOT IN (${oneOffs}))
     GROUP BY movement.part_id, day, location_id`,
    asOf,
  )
}

/** The number that stands for another from now on, where that holds for every appliance and there is only one. */
export function readSuccessors(database: ReadableDatabase): ReadonlyMap<number, number> {
  return new Map(
    database.tuples<[number, number]>(
      `SELECT old_part_id, min(new_part_id) FROM supersession
       WHERE made_from IS NULL AND made_to IS NULL
       GROUP BY old_part_id HAVING count(DISTINCT new_part_id) = 1`,
    ),
  )
}

/** What every location held at the end of each day on which that changed: part, day, change of pieces. */
export function readStockChanges(
  database: ReadableDatabase,
  asOf: string,
): IterableIterator<readonly [partId: number, day: DayNumber, change: number]> {
  return database.tuples<[number, number, number]>(
    `SELECT part_id, ${dayOf("date(recorded_at, 'localtime')")} AS day,
       sum(CASE WHEN to_location_id IS NULL THEN -quantity ELSE quantity END)
     FROM movement WHERE kind <> 'transfer' AND date(recorded_at, 'localtime') <= ?
     GROUP BY part_id, day ORDER BY part_id, day`,
    asOf,
  )
}

/** The first day and how many distinct days and months imported usage has, by which monthly data are known. */
export function readUsageDates(
  database: ReadableDatabase,
  asOf: string,
): { readonly days: number; readonly months: number } {
  const [counted] = database.tuples<[number, number]>(
    `SELECT count(DISTINCT date), count(DISTINCT substr(date, 1, 7)) FROM usage WHERE date <= ?`,
    asOf,
  )
  return { days: counted?.[0] ?? 0, months: counted?.[1] ?? 0 }
}

/** The day of the first use that is known; undefined where none is. */
export function readFirstDay(database: ReadableDatabase, asOf: string): DayNumber | undefined {
  const [found] = database.tuples<[number | null]>(
    `SELECT min(day) FROM (
       SELECT min(${dayOf('date')}) AS day FROM usage WHERE date <= ?1
       UNION ALL
       SELECT min(${dayOf("date(recorded_at, 'localtime')")}) FROM movement
       WHERE outside IN ('job', 'customer') AND date(recorded_at, 'localtime') <= ?1)`,
    asOf,
  )
  return found?.[0] ?? undefined
}
