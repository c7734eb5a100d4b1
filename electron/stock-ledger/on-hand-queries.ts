import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const onHandRow = z.object({
  location: z.string(),
  name: z.string(),
  part_number: z.string(),
  bin: z.string().nullable(),
  on_hand: z.int(),
})

/** The book of one location or one part or of all, summed from the movements; lines that sum to nothing are left out. */
export function listOnHand(
  database: ReadableDatabase,
  { locationId, partId }: { readonly locationId: number | null; readonly partId: number | null },
) {
  // SQLite carries these into both halves of the union, where an index finds the few movements that matter.
  const asked = [
    ...(locationId === null ? [] : [{ condition: 'location_id = ?', value: locationId }]),
    ...(partId === null ? [] : [{ condition: 'part_id = ?', value: partId }]),
  ]
  const rows = database.rows(
    onHandRow,
    `SELECT location, location.name, part_number, bin, sum(delta) AS on_hand
     FROM (SELECT to_location_id AS location_id, part_id, quantity AS delta FROM movement
           WHERE to_location_id IS NOT NULL
           UNION ALL
           SELECT from_location_id, part_id, -quantity FROM movement WHERE from_location_id IS NOT NULL)
     JOIN location USING (location_id) JOIN part USING (part_id)
     LEFT JOIN opening_stock USING (location_id, part_id)
     WHERE ${['true', ...asked.map(({ condition }) => condition)].join(' AND ')}
     GROUP BY location_id, part_id HAVING on_hand <> 0
     ORDER BY location_id, part_number`,
    ...asked.map(({ value }) => value),
  )
  return rows.map(row => ({
    location: row.location,
    locationName: row.name,
    partNumber: row.part_number,
    bin: row.bin,
    quantity: row.on_hand,
  }))
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
  const rows = database.rows(
    partOnHandRow,
    `WITH asked AS MATERIALIZED (SELECT value AS part_id FROM json_each(?))
     SELECT part_id, location, location.name AS name, bin, sum(delta) AS on_hand
     FROM (SELECT to_location_id AS location_id, part_id, quantity AS delta
           FROM asked CROSS JOIN movement USING (part_id) WHERE to_location_id IS NOT NULL
           UNION ALL
           SELECT from_location_id, part_id, -quantity
           FROM asked CROSS JOIN movement USING (part_id) WHERE from_location_id IS NOT NULL)
     JOIN location USING (location_id) LEFT JOIN opening_stock USING (location_id, part_id)
     GROUP BY part_id, location_id HAVING on_hand <> 0
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
