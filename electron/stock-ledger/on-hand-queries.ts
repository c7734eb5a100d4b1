import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { Bindable, ReadableDatabase } from '../database/handles.ts'

/**
 * What is where: the balances brought forward and the movements since, whose columns `location_id`, `part_id` and
 * `delta` the caller adds up. The condition is put to each half, where an index finds the few rows that matter.
 */
const deltas = (condition: string, since: 'by any index' | 'by arrival' = 'by any index') => `
  SELECT location_id, part_id, quantity AS delta FROM brought_forward WHERE ${condition}
  UNION ALL
  SELECT to_location_id, part_id, quantity FROM movement${hint[since]}
  WHERE arrival > (SELECT arrival FROM brought_forward_through) AND to_location_id IS NOT NULL
    AND ${condition.replaceAll('location_id', 'to_location_id')}
  UNION ALL
  SELECT from_location_id, part_id, -quantity FROM movement${hint[since]}
  WHERE arrival > (SELECT arrival FROM brought_forward_through) AND from_location_id IS NOT NULL
    AND ${condition.replaceAll('location_id', 'from_location_id')}`

/** A place has many movements and few since the balances; SQLite would look for all of the place's. */
const hint = { 'by any index': '', 'by arrival': ' NOT INDEXED' } as const

/** Likewise from the movements alone, for a condition that also says which of them are early enough. */
const deltasOfMovements = (condition: string) => `
  SELECT to_location_id AS location_id, part_id, quantity AS delta FROM movement
  WHERE to_location_id IS NOT NULL AND ${condition.replaceAll('location_id', 'to_location_id')}
  UNION ALL
  SELECT from_location_id, part_id, -quantity FROM movement
  WHERE from_location_id IS NOT NULL AND ${condition.replaceAll('location_id', 'from_location_id')}`

export interface BookAsked {
  readonly locationId: number | null
  readonly partId: number | null
  /** The first moment that no longer counts, as ISO 8601; null is now. */
  readonly before: string | null
}

/** The book of one location or one part or of all; lines that sum to nothing are left out. */
export function listOnHand(database: ReadableDatabase, { locationId, partId, before }: BookAsked) {
  const asked = [
    ...(locationId === null ? [] : [{ column: 'location_id', value: locationId }]),
    ...(partId === null ? [] : [{ column: 'part_id', value: partId }]),
  ]
  const condition = asked.map(({ column }, at) => `${column} = ?${at + 1}`).join(' AND ') || 'true'
  const early = `${condition} AND recorded_at < ?${asked.length + 1}`
  const bound: Bindable[] = [...asked.map(({ value }) => value), ...(before === null ? [] : [before])]
  const rows = database.tuples<
    [partId: PartId, location: string, name: string, partNumber: string, bin: string | null, onHand: number]
  >(
    `SELECT part_id, location, location.name, part_number, ${binOf('stock')} AS bin, on_hand
     FROM (SELECT location_id, part_id, sum(delta) AS on_hand
           FROM (${before === null ? deltas(condition, 'by arrival') : deltasOfMovements(early)})
           GROUP BY location_id, part_id HAVING on_hand <> 0) AS stock
     CROSS JOIN location USING (location_id) CROSS JOIN part USING (part_id)
     ORDER BY location_id, part_number`,
    ...bound,
  )
  return Array.from(rows, ([partId, location, locationName, partNumber, bin, quantity]) => ({
    ...{ partId, location, locationName, partNumber, bin, quantity },
  }))
}

/** Where it was put last, or else where the opening stock said. */
const binOf = (stock: string) => `nullif(ifnull(
  (SELECT bin FROM bin WHERE bin.location_id = ${stock}.location_id AND bin.part_id = ${stock}.part_id),
  (SELECT bin FROM opening_stock AS opening
   WHERE opening.location_id = ${stock}.location_id AND opening.part_id = ${stock}.part_id)), '')`

/** What the book has in one location by part; a part that sums to nothing is left out. */
export function readBook(database: ReadableDatabase, locationId: number): ReadonlyMap<number, number> {
  return new Map(
    database.tuples<[number, number]>(
      `SELECT part_id, sum(delta) AS on_hand FROM (${deltas('location_id = ?1', 'by arrival')})
       GROUP BY part_id HAVING on_hand <> 0`,
      locationId,
    ),
  )
}

const sumRow = z.object({ on_hand: z.int() })

/** How many of a part one location holds by the book. */
export function readOnHand(database: ReadableDatabase, locationId: number, partId: number): number {
  const condition = 'location_id = ?1 AND part_id = ?2'
  const sum = database.row(
    sumRow,
    `SELECT ifnull(sum(delta), 0) AS on_hand FROM (${deltas(condition)})`,
    locationId,
    partId,
  )
  return sum?.on_hand ?? 0
}

export interface BalanceAsked {
  readonly partId: number
  /** Null: the shop and its vans together. */
  readonly locationId: number | null
  /** Only the movements before this one; null is all of them. */
  readonly before: string | null
}

/** How many pieces of a part there were before a movement, in one place or in all of them. */
export function readBalanceBefore(
  database: ReadableDatabase,
  { partId, locationId, before }: BalanceAsked,
): number {
  const place = locationId === null ? '' : ' AND location_id = ?2'
  const condition = `part_id = ?1${place}`
  const earlier = deltasOfMovements(`${condition} AND movement_id < ?${locationId === null ? 2 : 3}`)
  const sum = database.row(
    sumRow,
    `SELECT ifnull(sum(delta), 0) AS on_hand FROM (${before === null ? deltas(condition) : earlier})`,
    ...[partId, ...(locationId === null ? [] : [locationId]), ...(before === null ? [] : [before])],
  )
  return sum?.on_hand ?? 0
}

const partOnHandRow = z.object({
  part_id: partId,
  location: z.string(),
  name: z.string(),
  bin: z.string().nullable(),
  on_hand: z.int(),
})

export interface PlaceOnHand {
  readonly location: string
  readonly name: string
  readonly bin: string | null
  readonly quantity: number
}

/** Where each of these parts is, the shop's own shelves first; a part that is nowhere is left out. */
export function readPartsOnHand(
  database: ReadableDatabase,
  partIds: readonly PartId[],
): ReadonlyMap<PartId, readonly PlaceOnHand[]> {
  const condition = 'part_id IN (SELECT value FROM json_each(?1))'
  const rows = database.rows(
    partOnHandRow,
    `SELECT part_id, location, location.name AS name, ${binOf('stock')} AS bin, on_hand
     FROM (SELECT location_id, part_id, sum(delta) AS on_hand FROM (${deltas(condition)})
           GROUP BY location_id, part_id HAVING on_hand <> 0) AS stock
     CROSS JOIN location USING (location_id)
     ORDER BY CASE kind WHEN 'shop' THEN 0 WHEN 'van' THEN 1 ELSE 2 END, location`,
    JSON.stringify(partIds),
  )
  const places = Map.groupBy(rows, row => row.part_id)
  return new Map(
    [...places].map(([id, found]) => [
      id,
      found.map(({ location, name, bin, on_hand }) => ({ location, name, bin, quantity: on_hand })),
    ]),
  )
}
