import { z } from 'zod'
import type { PartId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const offerRow = z.object({ supplier: z.string(), price: z.string(), currency: z.string() })

/**
 * The lowest price at which a supplier sells the smallest quantity of a part; null where nobody offers it. Prices in
 * the currency of most suppliers come first: figures in two currencies have no order.
 */
export function readLowestOffer(database: ReadableDatabase, id: PartId) {
  const found = database.row(
    offerRow,
    `SELECT supplier, price, currency FROM offer JOIN supplier USING (supplier_id)
     WHERE part_id = ?
     ORDER BY (SELECT count(*) FROM supplier AS other WHERE other.currency = supplier.currency) DESC,
              from_quantity, CAST(price AS REAL), supplier
     LIMIT 1`,
    id,
  )
  return found ?? null
}
