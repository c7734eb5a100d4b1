import { z } from 'zod'
import { partId } from '../../shared-schemas/identifiers.ts'
import type { ReorderSettings } from '../../shared-schemas/reorder-settings.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { PriceBreak } from './levels/order-quantity.ts'

const partRow = z.object({
  part_id: partId,
  part_number: z.string(),
  family_id: z.int(),
  family: z.string(),
  pieces: z.int().nullable(),
})

/** Every part of the catalogue, in the order of their numbers. */
export function listParts(database: ReadableDatabase) {
  return database
    .rows(
      partRow,
      `SELECT part_id, part_number, family_id, family, pieces
       FROM part JOIN family USING (family_id) LEFT JOIN shelf_limit USING (part_id) ORDER BY part_number`,
    )
    .map(row => ({
      partId: row.part_id,
      partNumber: row.part_number,
      familyId: row.family_id,
      family: row.family,
      shelfLimit: row.pieces,
    }))
}

/** The offer that a part is planned with: one supplier's prices, the fewest pieces first. */
export interface PlanningOffer {
  readonly supplierId: number
  readonly leadDays: number | null
  /** Of one piece when the fewest are bought, as a decimal. */
  readonly price: string
  readonly pack: number
  readonly minimum: number
  readonly breaks: readonly PriceBreak[]
}

/**
 * For each part that is offered, the supplier who is cheapest for the fewest pieces, those in the currency of most
 * suppliers first. Which supplier is ordered from is decided when the orders are built.
 */
export function readPlanningOffers(database: ReadableDatabase): ReadonlyMap<number, PlanningOffer> {
  const offers = new Map<number, { -readonly [Key in keyof PlanningOffer]: PlanningOffer[Key] }>()
  const rows = database.tuples<
    [
      id: number,
      supplierId: number,
      leadDays: number | null,
      from: number,
      price: string,
      pack: number,
      minimum: number,
    ]
  >(
    `WITH usual AS (SELECT currency, count(*) AS suppliers FROM supplier GROUP BY currency)
     SELECT part_id, supplier_id, lead_days, from_quantity, price, pack, minimum
     FROM offer JOIN supplier USING (supplier_id) JOIN usual USING (currency)
     ORDER BY part_id, suppliers DESC, from_quantity, CAST(price AS REAL), supplier`,
  )
  for (const [id, supplierId, leadDays, from, price, pack, minimum] of rows) {
    const best = offers.get(id)
    const ownBreak = { from, price: Number(price) }
    if (best === undefined) offers.set(id, { supplierId, leadDays, price, pack, minimum, breaks: [ownBreak] })
    else if (best.supplierId === supplierId) best.breaks = [...best.breaks, ownBreak]
  }
  return offers
}

/** Lines of the vans' lists: so many of a part, or of any part of a family. */
export function listVanLevels(database: ReadableDatabase): {
  readonly locationId: number
  readonly partId: number | null
  readonly familyId: number | null
  readonly level: number
}[] {
  const rows = database.tuples<[number, number | null, number | null, number]>(
    'SELECT location_id, part_id, family_id, level FROM van_list',
  )
  return Array.from(rows, ([locationId, partId, familyId, level]) => ({
    locationId,
    partId,
    familyId,
    level,
  }))
}

/** Pieces kept for jobs and customers now, by part. */
export function readReservedByPart(database: ReadableDatabase): ReadonlyMap<number, number> {
  return new Map(
    database.tuples<[number, number]>(
      `SELECT part_id, sum(quantity) FROM reservation
       WHERE NOT EXISTS (SELECT 1 FROM reservation_end WHERE reservation_end.reservation_id = reservation.reservation_id)
       GROUP BY part_id`,
    ),
  )
}

const settingRow = z.object({
  fill_rate: z.number(),
  review_days: z.int(),
  lead_days: z.int(),
  line_cost: z.string().nullable(),
  holding_rate: z.number(),
})

export function readReorderSettings(database: ReadableDatabase): ReorderSettings {
  const row = database.row(
    settingRow,
    'SELECT fill_rate, review_days, lead_days, line_cost, holding_rate FROM reorder_setting',
  )
  if (row === undefined) throw new Error('the layout has one row of reorder settings, but there is none')
  return {
    fillRate: row.fill_rate,
    reviewDays: row.review_days,
    leadDays: row.lead_days,
    lineCost: row.line_cost,
    holdingRate: row.holding_rate,
  }
}

/** Pieces that went to a job or a customer, by the ledger or by imported usage; undefined where nothing bears the reference. */
export function countPiecesFor(database: ReadableDatabase, reference: string): number | undefined {
  const [counted] = database.tuples<[rows: number, pieces: number | null]>(
    `SELECT count(*), sum(pieces) FROM (
       SELECT quantity AS pieces FROM usage WHERE job = ?1
       UNION ALL
       SELECT CASE WHEN from_location_id IS NULL THEN -quantity ELSE quantity END FROM movement
       WHERE reference = ?1 AND outside IN ('job', 'customer'))`,
    reference,
  )
  return counted === undefined || counted[0] === 0 ? undefined : (counted[1] ?? 0)
}

export function listShelfLimits(database: ReadableDatabase): ReadonlyMap<number, number> {
  return new Map(database.tuples<[number, number]>('SELECT part_id, pieces FROM shelf_limit'))
}
