import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { CheckedOrder, OrderLine } from '../../shared-schemas/order-check.ts'
import { supplierNamed } from '../catalogue/supplier-queries.ts'
import { inTransaction, type WritableDatabase } from '../database/handles.ts'
import { orRefuse } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { recordEvent } from './act-on-sheet.ts'
import { settleCarriage } from './draft-sheets.ts'
import { readOrderSheet } from './read-order-sheet.ts'
import { readLines, type StoredLine, sheetNumbered } from './sheet-queries.ts'
import { decideStage } from './sheet-states.ts'
import { appendLineOverride, setCarriage, setStage } from './sheet-writing-queries.ts'

export interface CheckingShop extends Pick<Shop, 'database' | 'now' | 'device'> {
  /** The order check of a whole order for one supplier. */
  readonly checkOrder: (order: {
    readonly lines: readonly OrderLine[]
    readonly supplier: string
  }) => CheckedOrder
}

/** A sheet with a stop left stays the draft that it was; what was let pass is kept with its line. */
export function checkSheet(
  shop: CheckingShop,
  { number, initials }: CheckedInput<'order-sheets.check-sheet'>,
): Output<'order-sheets.check-sheet'> {
  return inTransaction(shop.database, database => {
    const stored = sheetNumbered(database, number)
    const stage = orRefuse(decideStage(stored, 'check'))
    const { orderSheetId, supplier } = stored
    const lines = readLines(database, orderSheetId)
    const checked = shop.checkOrder({ lines: lines.map(asOrderLine), supplier })
    if (checked.stops > 0) return { sheet: readOrderSheet(database, stored), checked }
    // The supplier's terms may have changed since the draft.
    if (!stored.carriageIsGiven)
      setCarriage(database, orderSheetId, settleCarriage(lines, supplierNamed(database, supplier), undefined))
    keepOverrides(database, orderSheetId, checked)
    setStage(database, orderSheetId, stage)
    return { ...recordEvent(database, shop, { orderSheetId, number, what: 'checked', initials }), checked }
  })
}

/** A line of a sheet as the order check takes it. */
export function asOrderLine({ line, partNumber, quantity, for: meant }: StoredLine): OrderLine {
  const { brand, modelNumber, made, serial } = meant
  const said = Object.entries({ brand, modelNumber, made, serial }).filter(([, value]) => value !== null)
  return { line, partNumber, quantity, ...Object.fromEntries(said) }
}

function keepOverrides(database: WritableDatabase, orderSheetId: number, { lines }: CheckedOrder): void {
  for (const { line, flags } of lines)
    for (const { code, override } of flags)
      if (override !== undefined) appendLineOverride(database, orderSheetId, { line, code, ...override })
}
