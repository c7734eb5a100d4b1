import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const offerRow = z.object({ part_id: partId, supplier: z.string(), price: z.string(), currency: z.string() })

export interface Offer {
  readonly supplier: string
  readonly price: string
  readonly currency: string
}

/**
 * The lowest price at which a supplier sells the smallest quantity of each part; a part that nobody offers is left
 * out. Prices in the currency of most suppliers come first: figures in two currencies have no order.
 */
export function readLowestOffers(
  database: ReadableDatabase,
  partIds: readonly PartId[],
): ReadonlyMap<PartId, Offer> {
  const rows = database.rows(
    offerRow,
    `WITH usual AS (SELECT currency, count(*) AS suppliers FROM supplier GROUP BY currency),
          ranked AS (
            SELECT part_id, supplier, price, currency, row_number() OVER (
              PARTITION BY part_id ORDER BY suppliers DESC, from_quantity, CAST(price AS REAL), supplier) AS place
            FROM json_each(?) AS asked JOIN offer ON part_id = asked.value
              JOIN supplier USING (supplier_id) JOIN usual USING (currency))
     SELECT part_id, supplier, price, currency FROM ranked WHERE place = 1`,
    JSON.stringify(partIds),
  )
  return new Map(
    rows.map(({ part_id, supplier, price, currency }) => [part_id, { supplier, price, currency }]),
  )
}
