import { supplierNamed } from '../catalogue/supplier-queries.ts'
import { inTransaction } from '../database/handles.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import type { Shop } from '../requests/shop.ts'
import { bringTo, recordEvent } from './act-on-sheet.ts'
import { type CheckingShop, checkSheet } from './check-sheet.ts'
import { changeLines, draftSheets } from './draft-sheets.ts'
import { exportSheets, sendSheet } from './export-sheets.ts'
import { listSheets } from './list-sheets.ts'
import { listDue } from './on-order-queries.ts'
import { readBuyer, readOrdering, replaceBuyer, replaceOrdering } from './ordering-queries.ts'
import { partNumbered } from './part-numbered.ts'
import { readOrderSheet } from './read-order-sheet.ts'
import { sheetNumbered } from './sheet-queries.ts'
import { clearOverrides } from './sheet-writing-queries.ts'

export type OrderSheetNeeds = Pick<Shop, 'newId'> & CheckingShop

export function orderSheetsHandlers(shop: OrderSheetNeeds): HandlersOf<'order-sheets'> {
  const { database } = shop
  return {
    'order-sheets.draft-sheets': drafts => draftSheets(shop, drafts),
    'order-sheets.read-sheet': ({ number }) => ({
      sheet: readOrderSheet(database, sheetNumbered(database, number)),
    }),
    'order-sheets.list-sheets': asked => ({ sheets: listSheets(database, asked) }),
    'order-sheets.change-lines': changed => changeLines(shop, changed),
    'order-sheets.check-sheet': asked => checkSheet(shop, asked),
    'order-sheets.reopen-sheet': ({ number, initials }) =>
      inTransaction(database, writable => {
        const { orderSheetId } = bringTo(writable, number, 'reopen')
        clearOverrides(writable, orderSheetId)
        return recordEvent(writable, shop, { orderSheetId, number, what: 'reopened', initials })
      }),
    'order-sheets.send-sheet': asked => sendSheet(shop, asked),
    'order-sheets.cancel-sheet': ({ number, reason, initials }) =>
      inTransaction(database, writable => {
        const { orderSheetId } = bringTo(writable, number, 'cancel')
        return recordEvent(writable, shop, { orderSheetId, number, what: 'cancelled', reason, initials })
      }),
    'order-sheets.export-sheets': asked => exportSheets(database, asked),
    'order-sheets.list-on-order': ({ part }) => ({
      rows: listDue(database, part === undefined ? 'all parts' : [partNumbered(database, part).partId]).map(
        ({ partId: _id, ...due }) => due,
      ),
    }),
    'order-sheets.read-buyer': () => readBuyer(database),
    'order-sheets.save-buyer': ({ buyer }) =>
      inTransaction(database, writable => {
        replaceBuyer(writable, buyer)
        return { buyer }
      }),
    'order-sheets.read-ordering': ({ supplier }) => ({
      ordering: readOrdering(database, supplierNamed(database, supplier).supplierId),
    }),
    'order-sheets.save-ordering': ({ supplier, ordering }) =>
      inTransaction(database, writable => {
        replaceOrdering(writable, supplierNamed(writable, supplier).supplierId, ordering)
        return { ordering }
      }),
  }
}
