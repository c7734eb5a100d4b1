import type { OrderSheet } from '../../shared-schemas/order-sheets.ts'
import type { WritableDatabase } from '../database/handles.ts'
import { orRefuse } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { readOrderSheet } from './read-order-sheet.ts'
import { type StoredSheet, sheetNumbered } from './sheet-queries.ts'
import { decideStage, type SheetAct } from './sheet-states.ts'
import { appendEvent, type NewEvent, setStage } from './sheet-writing-queries.ts'

/** Brings a sheet to the stage after an act, where its state allows that; answers with the sheet as it was. */
export function bringTo(database: WritableDatabase, number: string, act: SheetAct): StoredSheet {
  const sheet = sheetNumbered(database, number)
  setStage(database, sheet.orderSheetId, orRefuse(decideStage(sheet, act)))
  return sheet
}

/** Writes down what was done, and answers with the sheet as it is since. */
export function recordEvent(
  database: WritableDatabase,
  stamp: Pick<Shop, 'now' | 'device'>,
  { number, ...event }: NewEvent & { readonly number: string },
): { sheet: OrderSheet } {
  appendEvent(database, stamp, event)
  return { sheet: readOrderSheet(database, sheetNumbered(database, number)) }
}
