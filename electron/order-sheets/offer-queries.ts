import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { SheetOffer } from './fill-line.ts'

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
