import { z } from 'zod'
import type { Delivery } from '../../../shared-schemas/goods-in.ts'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'
import type { Shop } from '../../requests/shop.ts'

type Stamp = Pick<Shop, 'newId' | 'now' | 'device'>

const deliveryRow = z.object({
  receipt_id: z.string(),
  delivery_note: z.string(),
  recorded_at: z.string(),
  initials: z.string(),
  line: z.int(),
  movement_id: z.string(),
  part_number: z.string(),
  quantity: z.int(),
  condition: z.enum(['good', 'damaged']),
  location: z.string(),
  unit_cost: z.string().nullable(),
  is_taken_back: z.int(),
})

/** What came of a sheet, delivery by delivery, the oldest first. */
export function listDeliveries(database: ReadableDatabase, orderSheetId: number): Delivery[] {
  const rows = database.rows(
    deliveryRow,
    `SELECT receipt_id, delivery_note, receipt.recorded_at, receipt.initials, came.line, movement_id, part_number,
       movement.quantity, condition, location, unit_cost,
       EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses = came.movement_id) AS is_taken_back
     FROM goods_receipt AS receipt JOIN goods_receipt_line AS came USING (receipt_id) JOIN movement USING (movement_id)
       JOIN part USING (part_id) JOIN location ON location_id = to_location_id
     WHERE receipt.order_sheet_id = ? ORDER BY receipt_id, came.line, movement_id`,
    orderSheetId,
  )
  return [...Map.groupBy(rows, row => row.receipt_id).values()].flatMap(lines => {
    const [first] = lines
    if (first === undefined) return []
    return [
      {
        receiptId: first.receipt_id,
        deliveryNote: first.delivery_note,
        recordedAt: first.recorded_at,
        initials: first.initials,
        lines: lines.map(row => ({
          ...{ line: row.line, movementId: row.movement_id, partNumber: row.part_number },
          ...{ quantity: row.quantity, condition: row.condition, to: row.location, unitCost: row.unit_cost },
          isTakenBack: row.is_taken_back === 1,
        })),
      },
    ]
  })
}

/** The number of the sheet that a delivery came for; nothing where there is no such delivery. */
export function findSheetOfDelivery(database: ReadableDatabase, receiptId: string): string | undefined {
  return database.row(
    z.object({ number: z.string() }),
    'SELECT number FROM goods_receipt JOIN order_sheet USING (order_sheet_id) WHERE receipt_id = ?',
    receiptId,
  )?.number
}

export interface NewDelivery {
  readonly orderSheetId: number
  readonly deliveryNote: string
  readonly initials: string | undefined
}

export function appendDelivery(
  database: WritableDatabase,
  { newId, now, device }: Stamp,
  { orderSheetId, deliveryNote, initials = '' }: NewDelivery,
): string {
  const receiptId = newId()
  database.run(
    `INSERT INTO goods_receipt (receipt_id, order_sheet_id, delivery_note, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?)`,
    receiptId,
    orderSheetId,
    deliveryNote,
    now().toISOString(),
    device,
    initials.toUpperCase(),
  )
  return receiptId
}

export interface NewDeliveryLine {
  readonly receiptId: string
  readonly orderSheetId: number
  readonly line: number
  readonly movementId: string
  readonly condition: 'good' | 'damaged'
}

export function appendDeliveryLine(
  database: WritableDatabase,
  { receiptId, orderSheetId, line, movementId, condition }: NewDeliveryLine,
): void {
  database.run(
    `INSERT INTO goods_receipt_line (movement_id, receipt_id, order_sheet_id, line, condition)
     VALUES (?, ?, ?, ?, ?)`,
    movementId,
    receiptId,
    orderSheetId,
    line,
    condition,
  )
}

const closingRow = z.object({
  line: z.int(),
  pieces: z.int(),
  reason: z.string(),
  recorded_at: z.string(),
  initials: z.string(),
})

/** What was closed of a sheet, and why, the oldest first. */
export function listClosings(database: ReadableDatabase, orderSheetId: number) {
  return database
    .rows(
      closingRow,
      `SELECT line, pieces, reason, recorded_at, initials FROM order_line_closing
       WHERE order_sheet_id = ? ORDER BY closing_id`,
      orderSheetId,
    )
    .map(({ recorded_at, ...closing }) => ({ ...closing, recordedAt: recorded_at }))
}

export interface NewClosing {
  readonly orderSheetId: number
  readonly line: number
  readonly pieces: number
  readonly reason: string
  readonly initials: string | undefined
}

export function appendClosing(
  database: WritableDatabase,
  { newId, now, device }: Stamp,
  { orderSheetId, line, pieces, reason, initials = '' }: NewClosing,
): void {
  database.run(
    `INSERT INTO order_line_closing (closing_id, order_sheet_id, line, pieces, reason, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    newId(),
    orderSheetId,
    line,
    pieces,
    reason,
    now().toISOString(),
    device,
    initials.toUpperCase(),
  )
}

/**
 * Days from sending to each arrival that still stands, by supplier: one figure for each line of each delivery that came
 * up to the end of a day. A line that came in two deliveries took two lead times.
 */
export function readLeadTimes(
  database: ReadableDatabase,
  asOf: string,
): ReadonlyMap<number, readonly number[]> {
  const rows = database.tuples<[supplierId: number, days: number]>(
    `SELECT supplier_id, CAST(julianday(substr(receipt.recorded_at, 1, 10)) - julianday(substr(sent.recorded_at, 1, 10)) AS INTEGER)
     FROM goods_receipt AS receipt JOIN order_sheet USING (order_sheet_id)
       JOIN order_sheet_event AS sent ON sent.order_sheet_id = receipt.order_sheet_id AND sent.what = 'sent'
       JOIN goods_receipt_line AS came USING (receipt_id)
     WHERE substr(receipt.recorded_at, 1, 10) <= ? AND condition = 'good'
       AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses = came.movement_id)
     GROUP BY receipt_id, came.line ORDER BY receipt_id, came.line`,
    asOf,
  )
  const days = new Map<number, number[]>()
  for (const [supplierId, took] of rows) {
    const known = days.get(supplierId)
    if (known === undefined) days.set(supplierId, [took])
    else known.push(took)
  }
  return days
}
