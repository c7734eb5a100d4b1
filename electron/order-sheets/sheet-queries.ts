import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { lineDeliveries } from './delivery-sql.ts'
import type { SheetInState } from './sheet-states.ts'

const stage = z.enum(['draft', 'checked', 'sent', 'cancelled'])

const sheetRow = z.object({
  order_sheet_id: z.int(),
  number: z.string(),
  supplier_id: z.int(),
  supplier: z.string(),
  name: z.string(),
  minimum_order: z.string().nullable(),
  currency: z.string(),
  carriage: z.string(),
  carriage_is_given: z.int(),
  stage,
  lines: z.int(),
  received: z.int(),
  to_come: z.int(),
})

export interface StoredSheet extends SheetInState {
  readonly orderSheetId: number
  readonly supplierId: number
  readonly supplier: string
  readonly supplierName: string
  readonly minimumOrder: string | null
  readonly currency: string
  readonly carriage: string
  readonly carriageIsGiven: boolean
  readonly lines: number
}

const sheets = (condition: string) => `
  WITH chosen AS (SELECT order_sheet_id FROM order_sheet WHERE ${condition})
  SELECT sheet.order_sheet_id, number, sheet.supplier_id, supplier, name, minimum_order, sheet.currency,
    sheet.carriage, carriage_is_given, stage, count(line) AS lines, ifnull(sum(received), 0) AS received,
    ifnull(sum(to_come), 0) AS to_come
  FROM chosen JOIN order_sheet AS sheet USING (order_sheet_id) JOIN supplier USING (supplier_id)
    JOIN (${lineDeliveries('line.order_sheet_id IN (SELECT order_sheet_id FROM chosen)')}) USING (order_sheet_id)
  GROUP BY sheet.order_sheet_id`

/** The sheet with this number. */
export function sheetNumbered(database: ReadableDatabase, number: string): StoredSheet {
  const row = database.row(sheetRow, sheets('number = ?'), number)
  if (row === undefined) throw new Refusal({ code: 'sheet-not-found', number })
  return asSheet(row)
}

/** The latest so many sheets of these stages and perhaps of one supplier, the latest first. */
export function listStoredSheets(
  database: ReadableDatabase,
  {
    stages,
    supplierId,
    most,
  }: { readonly stages: readonly string[]; readonly supplierId: number | null; readonly most: number },
): StoredSheet[] {
  return database
    .rows(
      sheetRow,
      `${sheets('stage IN (SELECT value FROM json_each(?1)) AND (?2 IS NULL OR supplier_id = ?2) ORDER BY order_sheet_id DESC LIMIT ?3')}
       ORDER BY sheet.order_sheet_id DESC`,
      JSON.stringify(stages),
      supplierId,
      most,
    )
    .map(asSheet)
}

function asSheet(row: z.output<typeof sheetRow>): StoredSheet {
  return {
    orderSheetId: row.order_sheet_id,
    number: row.number,
    supplierId: row.supplier_id,
    supplier: row.supplier,
    supplierName: row.name,
    minimumOrder: row.minimum_order,
    currency: row.currency,
    carriage: row.carriage,
    carriageIsGiven: row.carriage_is_given === 1,
    stage: row.stage,
    lines: row.lines,
    received: row.received,
    toCome: row.to_come,
  }
}

const lineRow = z.object({
  line: z.int(),
  part_id: partId,
  part_number: z.string(),
  description: z.string(),
  supplier_code: z.string().nullable(),
  quantity: z.int(),
  pack: z.int(),
  unit_price: z.string(),
  brand: z.string().nullable(),
  model_number: z.string().nullable(),
  made: z.string().nullable(),
  serial: z.string().nullable(),
  job: z.string().nullable(),
  customer: z.string().nullable(),
  received: z.int(),
  damaged: z.int(),
  closed: z.int(),
  to_come: z.int(),
})

export interface StoredLine {
  readonly line: number
  readonly partId: PartId
  readonly partNumber: string
  readonly description: string
  readonly supplierCode: string | null
  readonly quantity: number
  readonly pack: number
  readonly unitPrice: string
  readonly for: Readonly<
    Record<'brand' | 'modelNumber' | 'made' | 'serial' | 'job' | 'customer', string | null>
  >
  readonly received: number
  readonly damaged: number
  readonly closed: number
  readonly toCome: number
}

/** The lines of a sheet in their order, with what has come of each. */
export function readLines(database: ReadableDatabase, orderSheetId: number): StoredLine[] {
  return database
    .rows(
      lineRow,
      `SELECT line, part_id, part_number, description, supplier_code, written.quantity, pack, unit_price, brand,
         model_number, made, serial, job, customer, received, damaged, closed, to_come
       FROM order_sheet_line AS written JOIN (${lineDeliveries('line.order_sheet_id = ?1')}) USING (order_sheet_id, line, part_id)
         JOIN part USING (part_id)
       WHERE order_sheet_id = ?1 ORDER BY line`,
      orderSheetId,
    )
    .map(row => ({
      line: row.line,
      partId: row.part_id,
      partNumber: row.part_number,
      description: row.description,
      supplierCode: row.supplier_code,
      quantity: row.quantity,
      pack: row.pack,
      unitPrice: row.unit_price,
      for: {
        brand: row.brand,
        modelNumber: row.model_number,
        made: row.made,
        serial: row.serial,
        job: row.job,
        customer: row.customer,
      },
      received: row.received,
      damaged: row.damaged,
      closed: row.closed,
      toCome: row.to_come,
    }))
}

const eventRow = z.object({
  what: z.enum(['drafted', 'changed', 'checked', 'reopened', 'sent', 'cancelled']),
  reason: z.string(),
  recorded_at: z.string(),
  initials: z.string(),
})

/** What was done with a sheet, in order. */
export function readEvents(database: ReadableDatabase, orderSheetId: number) {
  return database
    .rows(
      eventRow,
      `SELECT what, reason, recorded_at, initials FROM order_sheet_event
       WHERE order_sheet_id = ? ORDER BY event_id`,
      orderSheetId,
    )
    .map(({ recorded_at, ...event }) => ({ ...event, recordedAt: recorded_at }))
}

const overrideRow = z.object({
  line: z.int(),
  code: z.string(),
  reason: z.string(),
  initials: z.string(),
  recorded_at: z.string(),
})

/** Stops that were let pass on the lines of a sheet. */
export function readSheetOverrides(database: ReadableDatabase, orderSheetId: number) {
  return database
    .rows(
      overrideRow,
      `SELECT line, code, reason, initials, recorded_at FROM order_sheet_override
       WHERE order_sheet_id = ? ORDER BY line, code`,
      orderSheetId,
    )
    .map(({ recorded_at, ...override }) => ({ ...override, recordedAt: recorded_at }))
}
