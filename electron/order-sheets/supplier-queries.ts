import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import type { SheetOffer } from './fill-line.ts'

const supplierRow = z.object({
  supplier_id: z.int(),
  supplier: z.string(),
  name: z.string(),
  currency: z.string(),
  minimum_order: z.string().nullable(),
  carriage: z.string().nullable(),
  carriage_paid_from: z.string().nullable(),
})

export type Supplier = ReturnType<typeof asSupplier>

/** The supplier with this name, however it is written. */
export function supplierNamed(database: ReadableDatabase, typed: string): Supplier {
  const rows = database.rows(
    supplierRow,
    `SELECT supplier_id, supplier, name, currency, minimum_order, carriage, carriage_paid_from
     FROM supplier ORDER BY supplier`,
  )
  const found = rows.find(({ supplier }) => supplier.toUpperCase() === typed.toUpperCase())
  if (found === undefined)
    throw new Refusal({ code: 'supplier-not-found', typed, known: rows.map(({ supplier }) => supplier) })
  return asSupplier(found)
}

function asSupplier(row: z.output<typeof supplierRow>) {
  return {
    supplierId: row.supplier_id,
    supplier: row.supplier,
    name: row.name,
    currency: row.currency,
    minimumOrder: row.minimum_order,
    carriage: row.carriage,
    carriagePaidFrom: row.carriage_paid_from,
  }
}

const offerRow = z.object({
  part_id: partId,
  supplier_code: z.string().nullable(),
  price: z.string(),
  from_quantity: z.int(),
  pack: z.int(),
})

/** What a supplier asks for each of these parts; one that it does not offer is left out. */
export function readOffersOf(
  database: ReadableDatabase,
  supplierId: number,
  partIds: readonly PartId[],
): ReadonlyMap<PartId, readonly SheetOffer[]> {
  const rows = database.rows(
    offerRow,
    `SELECT part_id, supplier_code, price, from_quantity, pack
     FROM json_each(?) AS asked CROSS JOIN offer ON part_id = asked.value AND supplier_id = ?`,
    JSON.stringify(partIds),
    supplierId,
  )
  const offers = rows.map(({ part_id, supplier_code, price, from_quantity, pack }) => ({
    partId: part_id,
    supplierCode: supplier_code,
    price,
    fromQuantity: from_quantity,
    pack,
  }))
  return Map.groupBy(offers, offer => offer.partId)
}
