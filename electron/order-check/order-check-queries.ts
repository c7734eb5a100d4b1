import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import { nameSubject, type RecordedOverride } from './apply-overrides.ts'
import type { SupplierOffer } from './line-facts.ts'

const offerRow = z.object({
  part_id: partId,
  supplier: z.string(),
  price: z.string(),
  currency: z.string(),
  from_quantity: z.int(),
  pack: z.int(),
  minimum: z.int(),
})

/** Everything that every supplier asks for each of these parts; a part that nobody offers is left out. */
export function readOffers(
  database: ReadableDatabase,
  partIds: readonly PartId[],
): ReadonlyMap<PartId, readonly SupplierOffer[]> {
  const rows = database.rows(
    offerRow,
    `SELECT part_id, supplier, price, currency, from_quantity, pack, minimum
     FROM json_each(?) AS asked JOIN offer ON part_id = asked.value JOIN supplier USING (supplier_id)`,
    JSON.stringify(partIds),
  )
  const offers = new Map<PartId, SupplierOffer[]>()
  for (const { part_id, from_quantity, ...offer } of rows) {
    const known = offers.get(part_id)
    const read = { ...offer, fromQuantity: from_quantity }
    if (known === undefined) offers.set(part_id, [read])
    else known.push(read)
  }
  return offers
}

const overrideRow = z.object({
  part_key: z.string(),
  brand_key: z.string(),
  model_key: z.string(),
  made: z.string(),
  serial: z.string(),
  supplier: z.string(),
  code: z.string(),
  reason: z.string(),
  initials: z.string(),
  recorded_at: z.string(),
})

/** The newest override of each subject that is about one of these parts, by `nameSubject`. */
export function readOverrides(
  database: ReadableDatabase,
  partKeys: readonly string[],
): ReadonlyMap<string, RecordedOverride> {
  const rows = database.rows(
    overrideRow,
    `SELECT part_key, brand_key, model_key, made, serial, supplier, code, reason, initials, recorded_at
     FROM json_each(?) AS asked CROSS JOIN order_check_override ON part_key = asked.value
     ORDER BY recorded_at, override_id`,
    JSON.stringify(partKeys),
  )
  const overrides = rows.map(row => ({
    partKey: row.part_key,
    brandKey: row.brand_key,
    modelKey: row.model_key,
    made: row.made,
    serial: row.serial,
    supplier: row.supplier,
    code: row.code,
    reason: row.reason,
    initials: row.initials,
    recordedAt: row.recorded_at,
  }))
  return new Map(overrides.map(override => [nameSubject(override), override]))
}

export interface NewOverride extends RecordedOverride {
  readonly overrideId: string
  readonly partNumber: string
  readonly device: string
}

export function appendOverride(database: WritableDatabase, override: NewOverride): void {
  database.run(
    `INSERT INTO order_check_override (override_id, part_key, part_number, brand_key, model_key, made, serial, supplier,
       code, reason, initials, recorded_at, device) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    override.overrideId,
    override.partKey,
    override.partNumber,
    override.brandKey,
    override.modelKey,
    override.made,
    override.serial,
    override.supplier,
    override.code,
    override.reason,
    override.initials,
    override.recordedAt,
    override.device,
  )
}
