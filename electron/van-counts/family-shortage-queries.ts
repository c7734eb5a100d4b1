import type { ReadableDatabase } from '../database/handles.ts'
import { listOnHand } from '../stock-ledger/on-hand-queries.ts'

/**
 * Pieces that vans lack of families of which their lists name no part, put down to the part of the family that is used
 * most and can be bought. What a list asks for by number is not among it, nor does it fill the family's line.
 */
export function readFamilyShortages(database: ReadableDatabase): ReadonlyMap<number, number> {
  const lines = listFamilyLines(database)
  if (lines.length === 0) return new Map()
  const inVans = Map.groupBy(
    listOnHand(database, { locationId: null, partId: null, before: null }),
    ({ location }) => location,
  )
  const short = new Map<number, number>()
  for (const { van, level, parts, usual } of lines) {
    if (usual === null) continue
    const there = (inVans.get(van) ?? []).reduce(
      (sum, { partId, quantity }) => sum + Math.max(0, quantity - (parts.get(partId) ?? quantity)),
      0,
    )
    if (there < level) short.set(usual, (short.get(usual) ?? 0) + level - there)
  }
  return short
}

interface FamilyLine {
  readonly van: string
  readonly level: number
  /** The parts of the family, each with what the van's list asks for by its number. */
  readonly parts: ReadonlyMap<number, number>
  readonly usual: number | null
}

function listFamilyLines(database: ReadableDatabase): FamilyLine[] {
  const rows = database.tuples<[number, string, number, number, number | null]>(
    `SELECT family_id, location, location_id, level,
       (SELECT part.part_id FROM part WHERE part.family_id = van_list.family_id
          AND EXISTS (SELECT 1 FROM offer WHERE offer.part_id = part.part_id)
        ORDER BY (SELECT ifnull(sum(quantity), 0) FROM usage WHERE usage.part_id = part.part_id) DESC, part_number
        LIMIT 1)
     FROM van_list JOIN location USING (location_id) WHERE van_list.family_id IS NOT NULL ORDER BY van_list_id`,
  )
  return Array.from(rows, ([familyId, van, locationId, level, usual]) => ({
    ...{ van, level, usual },
    parts: new Map(
      database.tuples<[number, number]>(
        `SELECT part_id, ifnull((SELECT level FROM van_list AS own
           WHERE own.location_id = ? AND own.part_id = part.part_id), 0) FROM part WHERE family_id = ?`,
        locationId,
        familyId,
      ),
    ),
  }))
}
