import { z } from 'zod'
import type { BuildingSettings } from '../../../shared-schemas/proposal.ts'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'
import { listLocations } from '../../stock-ledger/location-queries.ts'
import { listOnHand } from '../../stock-ledger/on-hand-queries.ts'
import type { OfferOnRecord } from './gather-lines.ts'
import type { SpareInVan } from './plan-moves.ts'

/** Every offer of these parts, in the order of the quantities from which they hold; by part. */
export function readOffersOfParts(
  database: ReadableDatabase,
  partIds: readonly number[],
): ReadonlyMap<number, readonly OfferOnRecord[]> {
  const offers = new Map<number, OfferOnRecord[]>()
  const rows = database.tuples<[number, string, string | null, string, number, number, number]>(
    `SELECT part_id, supplier, supplier_code, price, from_quantity, pack, minimum
     FROM json_each(?) AS asked CROSS JOIN offer ON part_id = asked.value CROSS JOIN supplier USING (supplier_id)
     ORDER BY part_id, supplier, from_quantity`,
    JSON.stringify(partIds),
  )
  for (const [partId, supplier, supplierCode, price, fromQuantity, pack, minimum] of rows) {
    const offer = { supplier, supplierCode, price, fromQuantity, pack, minimum }
    const known = offers.get(partId)
    if (known === undefined) offers.set(partId, [offer])
    else known.push(offer)
  }
  return offers
}

export interface NamedPart {
  readonly description: string
  readonly kind: 'genuine' | 'pattern'
}

/** What every part of the catalogue is called, by its id. */
export function readNames(database: ReadableDatabase): ReadonlyMap<number, NamedPart> {
  const rows = database.tuples<[number, string, NamedPart['kind']]>(
    'SELECT part_id, description, kind FROM part',
  )
  const parts = new Map<number, NamedPart>()
  for (const [partId, description, kind] of rows) parts.set(partId, { description, kind })
  return parts
}

/** What lies in vans and is on no list of theirs, neither by its number nor by its family, and kept for nobody. */
export function listSpareInVans(database: ReadableDatabase): SpareInVan[] {
  const rows = database.tuples<[number, string, number]>(
    `SELECT part_id, location, level FROM van_list JOIN location USING (location_id) WHERE part_id IS NOT NULL
     UNION ALL
     SELECT part.part_id, location, 1000000 FROM van_list JOIN part USING (family_id) JOIN location USING (location_id)
     UNION ALL
     SELECT part_id, location, quantity FROM reservation JOIN location USING (location_id)
     WHERE NOT EXISTS (SELECT 1 FROM reservation_end AS ended WHERE ended.reservation_id = reservation.reservation_id)`,
  )
  const claimed = new Map<string, number>()
  for (const [partId, location, pieces] of rows) {
    const key = `${location}\n${partId}`
    claimed.set(key, (claimed.get(key) ?? 0) + pieces)
  }
  const vans = new Set(
    listLocations(database).flatMap(({ kind, location }) => (kind === 'van' ? [location] : [])),
  )
  return listOnHand(database, { locationId: null, partId: null, before: null })
    .filter(({ location }) => vans.has(location))
    .map(({ partId, location: van, quantity }) => ({
      ...{ partId, van },
      quantity: quantity - (claimed.get(`${van}\n${partId}`) ?? 0),
    }))
    .filter(({ quantity }) => quantity > 0)
}

/**
 * By part, the parts that may be used in its place for stock: those that either replace the other for every appliance, and
 * those of its family that state the same for every attribute that the family names. Never a safety device, which is
 * replaced like for like.
 */
export function readInterchangeable(
  database: ReadableDatabase,
  partIds: readonly number[],
): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>()
  const rows = database.tuples<[number, number]>(
    `WITH asked AS (SELECT value AS part_id FROM json_each(?)),
       safe AS (SELECT asked.part_id, family_id FROM asked JOIN part USING (part_id) JOIN family USING (family_id)
         WHERE safety_device = 0)
     SELECT safe.part_id, other.part_id FROM safe CROSS JOIN part AS other USING (family_id)
     WHERE other.part_id <> safe.part_id
       AND EXISTS (SELECT 1 FROM family_attribute WHERE family_attribute.family_id = safe.family_id)
       AND NOT EXISTS (SELECT 1 FROM family_attribute AS named WHERE named.family_id = safe.family_id
         AND NOT EXISTS (SELECT 1 FROM part_attribute AS own JOIN part_attribute AS its USING (attribute, value)
           WHERE own.attribute = named.attribute AND own.part_id = safe.part_id AND its.part_id = other.part_id))
     UNION
     SELECT safe.part_id, CASE WHEN old_part_id = safe.part_id THEN new_part_id ELSE old_part_id END
     FROM safe JOIN supersession ON safe.part_id IN (old_part_id, new_part_id)
     WHERE way = 'both' AND made_from IS NULL AND made_to IS NULL AND NOT EXISTS (SELECT 1
       FROM supersession_need AS need WHERE need.supersession_id = supersession.supersession_id)
     ORDER BY 1, 2`,
    JSON.stringify(partIds),
  )
  for (const [partId, other] of rows) {
    const known = found.get(partId)
    if (known === undefined) found.set(partId, [other])
    else known.push(other)
  }
  return found
}

const settingsRow = z.object({ budget: z.string().nullable(), uses_pattern_stock: z.int() })

export function readBuildingSettings(database: ReadableDatabase): BuildingSettings {
  const row = database.row(settingsRow, 'SELECT budget, uses_pattern_stock FROM building_setting')
  return { budget: row?.budget ?? null, usesPatternStock: row?.uses_pattern_stock === 1 }
}

export function replaceBuildingSettings(
  database: WritableDatabase,
  { budget, usesPatternStock }: BuildingSettings,
): void {
  database.run(
    'UPDATE building_setting SET budget = ?, uses_pattern_stock = ?',
    budget,
    usesPatternStock ? 1 : 0,
  )
}

/** By part, the supplier that the shop wants it from. */
export function readPreferredSuppliers(database: ReadableDatabase): ReadonlyMap<number, string> {
  return new Map(
    database.tuples<[number, string]>(
      'SELECT part_id, supplier FROM preferred_supplier JOIN supplier USING (supplier_id)',
    ),
  )
}

export function replacePreferredSupplier(
  database: WritableDatabase,
  partId: number,
  supplier: string | null,
): void {
  database.run('DELETE FROM preferred_supplier WHERE part_id = ?', partId)
  if (supplier !== null)
    database.run(
      'INSERT INTO preferred_supplier SELECT ?, supplier_id FROM supplier WHERE supplier = ?',
      partId,
      supplier,
    )
}
