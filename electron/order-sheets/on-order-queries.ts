import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { OnOrder } from '../../shared-schemas/order-sheets.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { lineDeliveries } from './delivery-sql.ts'

const dueRow = z.object({
  part_id: partId,
  part_number: z.string(),
  number: z.string(),
  supplier: z.string(),
  to_come: z.int(),
  sent_at: z.string(),
})

export interface DuePieces extends OnOrder {
  readonly partId: PartId
}

/**
 * What suppliers still owe of sheets that were sent, the oldest first: of these parts, or of all. Back-orders are among
 * it; drafts and checked sheets are not, since nobody has been asked for anything yet.
 */
export function listDue(database: ReadableDatabase, partIds: readonly PartId[] | 'all parts'): DuePieces[] {
  const asked = partIds === 'all parts' ? 'true' : 'line.part_id IN (SELECT value FROM json_each(?))'
  return database
    .rows(
      dueRow,
      `SELECT part_id, part_number, number, supplier, sum(to_come) AS to_come,
         (SELECT recorded_at FROM order_sheet_event AS event
          WHERE event.order_sheet_id = sheet.order_sheet_id AND what = 'sent') AS sent_at
       FROM (${lineDeliveries(asked)}) AS due JOIN order_sheet AS sheet USING (order_sheet_id)
         JOIN supplier USING (supplier_id) JOIN part USING (part_id)
       WHERE stage = 'sent' AND to_come > 0
       GROUP BY sheet.order_sheet_id, part_id ORDER BY sheet.order_sheet_id, part_number`,
      ...(partIds === 'all parts' ? [] : [JSON.stringify(partIds)]),
    )
    .map(row => ({
      partId: row.part_id,
      partNumber: row.part_number,
      number: row.number,
      supplier: row.supplier,
      quantity: row.to_come,
      sentAt: row.sent_at,
    }))
}

/** For the order check: the open order lines of these parts. */
export function readOpenOrders(
  database: ReadableDatabase,
  partIds: readonly PartId[],
): ReadonlyMap<PartId, { readonly order: string; readonly supplier: string; readonly quantity: number }[]> {
  const due = listDue(database, partIds)
  return new Map(
    [...Map.groupBy(due, line => line.partId)].map(([id, lines]) => [
      id,
      lines.map(({ number, supplier, quantity }) => ({ order: number, supplier, quantity })),
    ]),
  )
}

/** For the reorder: pieces of each part that are on order; a part of which nothing is due is left out. */
export function readOnOrder(database: ReadableDatabase): ReadonlyMap<PartId, number> {
  const pieces = new Map<PartId, number>()
  for (const due of listDue(database, 'all parts'))
    pieces.set(due.partId, (pieces.get(due.partId) ?? 0) + due.quantity)
  return pieces
}

/** For the reorder: pieces of each part on sheets that are drafted or checked, and that nobody was asked for yet. */
export function readNotSent(database: ReadableDatabase): ReadonlyMap<number, number> {
  return new Map(
    database.tuples<[number, number]>(
      `SELECT part_id, sum(quantity) FROM order_sheet JOIN order_sheet_line USING (order_sheet_id)
       WHERE stage IN ('draft', 'checked') GROUP BY part_id`,
    ),
  )
}
