import type { SheetEvent } from '../../shared-schemas/order-sheets.ts'
import type { WritableDatabase } from '../database/handles.ts'
import type { Shop } from '../requests/shop.ts'
import type { FilledLine } from './fill-line.ts'
import type { Stage } from './sheet-states.ts'

export interface NewSheet {
  readonly supplierId: number
  readonly currency: string
  readonly carriage: string
  readonly carriageIsGiven: boolean
}

/** Appends a draft with the next number of the year; no number is ever left out, since no sheet is deleted. */
export function appendSheet(
  database: WritableDatabase,
  sheet: NewSheet,
  now: Date,
): { readonly orderSheetId: number; readonly number: string } {
  const year = now.getUTCFullYear()
  const [last] = database.tuples<[number | null]>('SELECT max(serial) FROM order_sheet WHERE year = ?', year)
  const serial = (last?.[0] ?? 0) + 1
  const number = `${year}-${String(serial).padStart(4, '0')}`
  const { lastId } = database.run(
    `INSERT INTO order_sheet (number, year, serial, supplier_id, currency, carriage, carriage_is_given, stage)
     VALUES (?, ?, ?, ?, ?, ?, ?, 'draft')`,
    number,
    year,
    serial,
    sheet.supplierId,
    sheet.currency,
    sheet.carriage,
    sheet.carriageIsGiven ? 1 : 0,
  )
  return { orderSheetId: lastId, number }
}

/** Puts these lines, numbered from 1, in the place of those that the draft had. */
export function replaceLines(
  database: WritableDatabase,
  orderSheetId: number,
  lines: readonly FilledLine[],
): void {
  clearOverrides(database, orderSheetId)
  database.run('DELETE FROM order_sheet_line WHERE order_sheet_id = ?', orderSheetId)
  for (const [at, line] of lines.entries())
    database.run(
      `INSERT INTO order_sheet_line (order_sheet_id, line, part_id, supplier_code, quantity, pack, unit_price, brand,
         model_number, made, serial, job, customer) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      orderSheetId,
      at + 1,
      line.partId,
      line.supplierCode ?? null,
      line.quantity,
      line.pack,
      line.unitPrice,
      line.brand ?? null,
      line.modelNumber ?? null,
      line.made ?? null,
      line.serial ?? null,
      line.job ?? null,
      line.customer ?? null,
    )
}

export function setCarriage(
  database: WritableDatabase,
  orderSheetId: number,
  { carriage, carriageIsGiven }: Pick<NewSheet, 'carriage' | 'carriageIsGiven'>,
): void {
  database.run(
    'UPDATE order_sheet SET carriage = ?, carriage_is_given = ? WHERE order_sheet_id = ?',
    carriage,
    carriageIsGiven ? 1 : 0,
    orderSheetId,
  )
}

export function setStage(database: WritableDatabase, orderSheetId: number, stage: Stage): void {
  database.run('UPDATE order_sheet SET stage = ? WHERE order_sheet_id = ?', stage, orderSheetId)
}

export interface LineOverride {
  readonly line: number
  readonly code: string
  readonly reason: string
  readonly initials: string
  readonly recordedAt: string
}

export function clearOverrides(database: WritableDatabase, orderSheetId: number): void {
  database.run('DELETE FROM order_sheet_override WHERE order_sheet_id = ?', orderSheetId)
}

export function appendLineOverride(
  database: WritableDatabase,
  orderSheetId: number,
  { line, code, reason, initials, recordedAt }: LineOverride,
): void {
  database.run(
    `INSERT INTO order_sheet_override (order_sheet_id, line, code, reason, initials, recorded_at)
     VALUES (?, ?, ?, ?, ?, ?)`,
    orderSheetId,
    line,
    code,
    reason,
    initials,
    recordedAt,
  )
}

export interface NewEvent {
  readonly orderSheetId: number
  readonly what: SheetEvent['what']
  readonly reason?: string | undefined
  readonly initials?: string | undefined
}

export function appendEvent(
  database: WritableDatabase,
  { now, device }: Pick<Shop, 'now' | 'device'>,
  { orderSheetId, what, reason = '', initials = '' }: NewEvent,
): void {
  database.run(
    `INSERT INTO order_sheet_event (order_sheet_id, what, reason, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?)`,
    orderSheetId,
    what,
    reason,
    now().toISOString(),
    device,
    initials.toUpperCase(),
  )
}
