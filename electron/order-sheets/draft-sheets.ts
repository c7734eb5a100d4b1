import type { CheckedInput } from '../../shared-schemas/index.ts'
import type { DraftLine, OrderSheet } from '../../shared-schemas/order-sheets.ts'
import { findPartsByNumbers } from '../catalogue/part-queries.ts'
import { type Supplier, supplierNamed } from '../catalogue/supplier-queries.ts'
import { inTransaction, type ReadableDatabase, type WritableDatabase } from '../database/handles.ts'
import { orRefuse } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { recordEvent } from './act-on-sheet.ts'
import { type FilledLine, fillLine } from './fill-line.ts'
import { readOffersOf } from './offer-queries.ts'
import { partNotFound } from './part-numbered.ts'
import { reckonCarriage, reckonTotals } from './reckon-totals.ts'
import { sheetNumbered } from './sheet-queries.ts'
import { decideStage } from './sheet-states.ts'
import { appendSheet, replaceLines, setCarriage } from './sheet-writing-queries.ts'

type DraftingShop = Pick<Shop, 'database' | 'now' | 'device'>
type Drafts = CheckedInput<'order-sheets.draft-sheets'>

/** Makes drafts, each with the next number: all of them or none. */
export function draftSheets(shop: DraftingShop, { sheets, initials }: Drafts): { sheets: OrderSheet[] } {
  return inTransaction(shop.database, database => ({
    sheets: sheets.map(draft => draftSheet(database, shop, { ...draft, initials })),
  }))
}

function draftSheet(
  database: WritableDatabase,
  shop: DraftingShop,
  draft: Drafts['sheets'][number] & Pick<Drafts, 'initials'>,
): OrderSheet {
  const supplier = supplierNamed(database, draft.supplier)
  const lines = fillLines(database, supplier, draft.lines)
  const carriage = settleCarriage(lines, supplier, draft.carriage)
  const { orderSheetId, number } = appendSheet(database, { ...supplier, ...carriage }, shop.now())
  replaceLines(database, orderSheetId, lines)
  return recordEvent(database, shop, { orderSheetId, number, what: 'drafted', initials: draft.initials })
    .sheet
}

/** Puts these lines in the place of a draft's. */
export function changeLines(
  shop: DraftingShop,
  { number, lines, carriage, initials }: CheckedInput<'order-sheets.change-lines'>,
): { sheet: OrderSheet } {
  return inTransaction(shop.database, database => {
    const sheet = sheetNumbered(database, number)
    orRefuse(decideStage(sheet, 'change'))
    const { orderSheetId } = sheet
    const supplier = supplierNamed(database, sheet.supplier)
    const filled = fillLines(database, supplier, lines)
    replaceLines(database, orderSheetId, filled)
    setCarriage(database, orderSheetId, settleCarriage(filled, supplier, carriage))
    return recordEvent(database, shop, { orderSheetId, number, what: 'changed', initials })
  })
}

function fillLines(
  database: ReadableDatabase,
  { supplierId, supplier }: Supplier,
  drafts: readonly DraftLine[],
): FilledLine[] {
  const parts = findPartsByNumbers(
    database,
    drafts.map(({ part }) => part),
  )
  const ids = [...new Set([...parts.values()].map(({ partId }) => partId))]
  const offers = readOffersOf(database, supplierId, ids)
  return drafts.map(draft => {
    const part = parts.get(draft.part)
    if (part === undefined) throw partNotFound(database, draft.part)
    return orRefuse(fillLine(draft, { part, offers: offers.get(part.partId) ?? [], supplier }))
  })
}

/** As a person gave it, else by the supplier's terms for what these lines come to. */
export function settleCarriage(
  lines: Parameters<typeof reckonTotals>[0],
  supplier: Supplier,
  given: string | undefined,
) {
  if (given !== undefined) return { carriage: given, carriageIsGiven: true }
  const { net } = reckonTotals(lines, { carriage: '0', currency: supplier.currency })
  return { carriage: reckonCarriage(net, supplier), carriageIsGiven: false }
}
