import { z } from 'zod'
import type { ReadableDatabase } from '../database/handles.ts'
import { listOnHand } from '../stock-ledger/on-hand-queries.ts'
import { readReserved } from '../stock-ledger/reservation-queries.ts'
import type { ListedLevel, ShopStock, TopUpFacts, TopUpPart } from './plan-top-up.ts'

const listedRow = z.object({
  family_id: z.int().nullable(),
  part_id: z.int().nullable(),
  name: z.string(),
  level: z.int(),
})

const partRow = z.object({
  part_id: z.int(),
  part_number: z.string(),
  family_id: z.int(),
  kind: z.enum(['genuine', 'pattern']),
})

/** Everything that the top-up of a van is planned from. */
export function readTopUpFacts(
  database: ReadableDatabase,
  locationId: number,
  prefer: TopUpFacts['prefer'],
): TopUpFacts {
  const list = listLevels(database, locationId)
  const stock = listFree(database)
  const inVan = stock.filter(line => line.locationId === locationId)
  const inShop = stock.filter(line => line.kind === 'shop')
  const named = list.flatMap(({ partId }) => (partId === null ? [] : [partId]))
  const standIns = listStandIns(database, named)
  const ids = new Set([...named, ...[...standIns.values()].flat(), ...stock.map(({ partId }) => partId)])
  return { list, inVan, inShop, standIns, prefer, parts: readParts(database, [...ids]) }
}

function listLevels(database: ReadableDatabase, locationId: number): ListedLevel[] {
  return database
    .rows(
      listedRow,
      `SELECT van_list.family_id, van_list.part_id, ifnull(part_number, family.family) AS name, level
       FROM van_list LEFT JOIN part USING (part_id) LEFT JOIN family ON family.family_id = van_list.family_id
       WHERE location_id = ? ORDER BY van_list_id`,
      locationId,
    )
    .map(row => ({ familyId: row.family_id, partId: row.part_id, name: row.name, level: row.level }))
}

type FreeStock = ShopStock & { readonly locationId: number; readonly kind: string }

const placeRow = z.object({ location_id: z.int(), location: z.string(), kind: z.string() })

/** What lies in each location and is kept for nobody. */
function listFree(database: ReadableDatabase): FreeStock[] {
  const reserved = readReserved(database)
  const places = new Map(
    database
      .rows(placeRow, 'SELECT location_id, location, kind FROM location')
      .map(row => [row.location, { locationId: row.location_id, kind: row.kind }]),
  )
  return listOnHand(database, { locationId: null, partId: null, before: null }).flatMap(line => {
    const place = places.get(line.location)
    if (place === undefined) return []
    const kept = reserved.get(`${line.location}\n${line.partNumber}`) ?? 0
    const { partId, location, bin, quantity } = line
    return [{ partId, location, bin, free: quantity - kept, ...place }]
  })
}

/** Parts that may always take the place of these: no date parts them, and nothing else must be bought with them. */
function listStandIns(database: ReadableDatabase, partIds: readonly number[]): Map<number, number[]> {
  const rows = database.tuples<[number, number]>(
    `WITH RECURSIVE step(asked, part_id, steps) AS (
       SELECT value, value, 0 FROM json_each(?)
       UNION
       SELECT asked, CASE WHEN old_part_id = step.part_id THEN new_part_id ELSE old_part_id END, steps + 1
       FROM step JOIN supersession
         ON old_part_id = step.part_id OR (new_part_id = step.part_id AND way = 'both')
       WHERE steps < ${mostSteps} AND made_from IS NULL AND made_to IS NULL
         AND NOT EXISTS (SELECT 1 FROM supersession_need AS need
           WHERE need.supersession_id = supersession.supersession_id))
     SELECT asked, part_id FROM step WHERE part_id <> asked GROUP BY asked, part_id ORDER BY asked, max(steps) DESC`,
    JSON.stringify(partIds),
  )
  const standIns = new Map<number, number[]>()
  for (const [asked, partId] of rows) standIns.set(asked, [...(standIns.get(asked) ?? []), partId])
  return standIns
}

/** A part changes its number a few times in its life. */
const mostSteps = 8

/** In the order of their numbers, so that equals are planned alike on every machine. */
function readParts(database: ReadableDatabase, partIds: readonly number[]): Map<number, TopUpPart> {
  const rows = database.rows(
    partRow,
    `SELECT part_id, part_number, family_id, kind FROM json_each(?) AS asked CROSS JOIN part ON part_id = asked.value
     ORDER BY part_number`,
    JSON.stringify(partIds),
  )
  return new Map(
    rows.map(row => [
      row.part_id,
      { partId: row.part_id, partNumber: row.part_number, familyId: row.family_id, kind: row.kind },
    ]),
  )
}
