import type { CheckedOrder, OrderLine } from '../../shared-schemas/order-check.ts'
import type { DraftLine, OrderSheet } from '../../shared-schemas/order-sheets.ts'
import { findPartByNumber, findPartsByNumbers, listNearestPartNumbers } from '../catalogue/part-queries.ts'
import { inTransaction, type ReadableDatabase, type WritableDatabase } from '../database/handles.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import { orRefuse, Refusal } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { type FilledLine, fillLine } from './fill-line.ts'
import { listDue } from './on-order-queries.ts'
import { readOrderSheet, summariseSheet } from './read-order-sheet.ts'
import { reckonCarriage, reckonTotals } from './reckon-totals.ts'
import {
  listStoredSheets,
  readLines,
  type StoredLine,
  type StoredSheet,
  sheetNumbered,
} from './sheet-queries.ts'
import { decideStage, type SheetAct, stateOf } from './sheet-states.ts'
import {
  appendEvent,
  appendLineOverride,
  appendSheet,
  clearOverrides,
  type NewEvent,
  replaceLines,
  setCarriage,
  setStage,
} from './sheet-writing-queries.ts'
import { readOffersOf, type Supplier, supplierNamed } from './supplier-queries.ts'

export interface OrderSheetNeeds extends Pick<Shop, 'database' | 'now' | 'newId' | 'device'> {
  /** The order check of a whole order for one supplier. */
  readonly checkOrder: (order: {
    readonly lines: readonly OrderLine[]
    readonly supplier: string
  }) => CheckedOrder
}

export function orderSheetsHandlers(shop: OrderSheetNeeds): HandlersOf<'order-sheets'> {
  const { database } = shop
  return {
    'order-sheets.draft-sheets': ({ sheets, initials }) =>
      inTransaction(database, writable => ({
        sheets: sheets.map(draft => draftSheet(writable, shop, draft, initials)),
      })),
    'order-sheets.read-sheet': ({ number }) => ({
      sheet: readOrderSheet(database, sheetNumbered(database, number)),
    }),
    'order-sheets.list-sheets': ({ states, supplier, most }) => ({
      sheets: listStoredSheets(database, {
        stages: states === undefined ? allStages : stagesOf(states),
        supplierId: supplier === undefined ? null : supplierNamed(database, supplier).supplierId,
      })
        .filter(sheet => states === undefined || states.includes(stateOf(sheet)))
        .slice(0, most)
        .map(sheet => summariseSheet(database, sheet)),
    }),
    'order-sheets.change-lines': ({ number, lines, carriage, initials }) =>
      inTransaction(database, writable => {
        const sheet = sheetNumbered(writable, number)
        orRefuse(decideStage(sheet, 'change'))
        const supplier = supplierNamed(writable, sheet.supplier)
        const filled = fillLines(writable, supplier, lines)
        replaceLines(writable, sheet.orderSheetId, filled)
        setCarriage(writable, sheet.orderSheetId, settleCarriage(filled, supplier, carriage))
        return recorded(
          writable,
          shop,
          { orderSheetId: sheet.orderSheetId, what: 'changed', initials },
          number,
        )
      }),
    'order-sheets.check-sheet': ({ number, initials }) => checkSheet(shop, number, initials),
    'order-sheets.reopen-sheet': ({ number, initials }) =>
      inTransaction(database, writable => {
        const { orderSheetId } = bringTo(writable, number, 'reopen')
        clearOverrides(writable, orderSheetId)
        return recorded(writable, shop, { orderSheetId, what: 'reopened', initials }, number)
      }),
    'order-sheets.send-sheet': ({ number, initials }) =>
      inTransaction(database, writable => {
        const { orderSheetId } = bringTo(writable, number, 'send')
        return recorded(writable, shop, { orderSheetId, what: 'sent', initials }, number)
      }),
    'order-sheets.cancel-sheet': ({ number, reason, initials }) =>
      inTransaction(database, writable => {
        const { orderSheetId } = bringTo(writable, number, 'cancel')
        return recorded(writable, shop, { orderSheetId, what: 'cancelled', reason, initials }, number)
      }),
    'order-sheets.list-on-order': ({ part }) => ({
      rows: listDue(database, part === undefined ? 'all parts' : [partNumbered(database, part).partId]).map(
        ({ partId: _id, ...due }) => due,
      ),
    }),
  }
}

const allStages = ['draft', 'checked', 'sent', 'cancelled']

/** A sheet whose remainders were all closed is cancelled though a person brought it to be sent. */
function stagesOf(states: readonly string[]): string[] {
  return allStages.filter(
    stage =>
      states.includes(stage) ||
      (stage === 'sent' && states.some(state => !allStages.includes(state) || state === 'cancelled')),
  )
}

interface Draft {
  readonly supplier: string
  readonly carriage?: string | undefined
  readonly lines: readonly DraftLine[]
}

function draftSheet(
  database: WritableDatabase,
  shop: OrderSheetNeeds,
  draft: Draft,
  initials: string | undefined,
): OrderSheet {
  const supplier = supplierNamed(database, draft.supplier)
  const lines = fillLines(database, supplier, draft.lines)
  const orderSheetId = appendSheet(
    database,
    { ...supplier, ...settleCarriage(lines, supplier, draft.carriage) },
    shop.now(),
  )
  replaceLines(database, orderSheetId, lines)
  const [[number] = ['']] = database.tuples<[string]>(
    'SELECT number FROM order_sheet WHERE order_sheet_id = ?',
    orderSheetId,
  )
  return recorded(database, shop, { orderSheetId, what: 'drafted', initials }, number).sheet
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
  const offers = readOffersOf(database, supplierId, [
    ...new Set([...parts.values()].map(({ partId }) => partId)),
  ])
  return drafts.map(draft => {
    const part = parts.get(draft.part)
    if (part === undefined) throw partNotFound(database, draft.part)
    return orRefuse(fillLine(draft, { part, offers: offers.get(part.partId) ?? [], supplier }))
  })
}

function partNumbered(database: ReadableDatabase, typed: string) {
  const part = findPartByNumber(database, typed)
  if (part === undefined) throw partNotFound(database, typed)
  return part
}

function partNotFound(database: ReadableDatabase, typed: string): Refusal {
  return new Refusal({ code: 'part-not-found', typed, nearest: listNearestPartNumbers(database, typed) })
}

/** As a person gave it, else by the supplier's terms for what these lines come to. */
function settleCarriage(lines: readonly FilledLine[], supplier: Supplier, given: string | undefined) {
  if (given !== undefined) return { carriage: given, carriageIsGiven: true }
  const { net } = reckonTotals(lines, { carriage: '0', currency: supplier.currency })
  return { carriage: reckonCarriage(net, supplier), carriageIsGiven: false }
}

/** Brings a sheet to the stage after an act, where its state allows that. */
function bringTo(database: WritableDatabase, number: string, act: SheetAct): StoredSheet {
  const sheet = sheetNumbered(database, number)
  setStage(database, sheet.orderSheetId, orRefuse(decideStage(sheet, act)))
  return sheet
}

/** Writes down what was done, and answers with the sheet as it is since. */
function recorded(
  database: WritableDatabase,
  shop: OrderSheetNeeds,
  event: NewEvent,
  number: string,
): { sheet: OrderSheet } {
  appendEvent(database, shop, event)
  return { sheet: readOrderSheet(database, sheetNumbered(database, number)) }
}

/** A sheet with a stop left stays the draft that it was; what was let pass is kept with the line. */
function checkSheet(shop: OrderSheetNeeds, number: string, initials: string | undefined) {
  return inTransaction(shop.database, writable => {
    const stored = sheetNumbered(writable, number)
    const stage = orRefuse(decideStage(stored, 'check'))
    const lines = readLines(writable, stored.orderSheetId)
    const checked = shop.checkOrder({ lines: lines.map(asOrderLine), supplier: stored.supplier })
    if (checked.stops > 0) return { sheet: readOrderSheet(writable, stored), checked }
    const { orderSheetId } = stored
    if (!stored.carriageIsGiven) {
      const { net } = reckonTotals(lines, stored)
      const carriage = reckonCarriage(net, supplierNamed(writable, stored.supplier))
      setCarriage(writable, orderSheetId, { carriage, carriageIsGiven: false })
    }
    for (const { line, flags } of checked.lines)
      for (const { code, override } of flags)
        if (override !== undefined) appendLineOverride(writable, orderSheetId, { line, code, ...override })
    setStage(writable, orderSheetId, stage)
    return { ...recorded(writable, shop, { orderSheetId, what: 'checked', initials }, number), checked }
  })
}

function asOrderLine({ line, partNumber, quantity, for: meant }: StoredLine): OrderLine {
  const { brand, modelNumber, made, serial } = meant
  const said = Object.entries({ brand, modelNumber, made, serial }).filter(([, value]) => value !== null)
  return { line, partNumber, quantity, ...Object.fromEntries(said) }
}
