import type { CheckedInput } from '../../shared-schemas/index.ts'
import type { SheetState, SheetSummary } from '../../shared-schemas/order-sheets.ts'
import { supplierNamed } from '../catalogue/supplier-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { summariseSheet } from './read-order-sheet.ts'
import { listStoredSheets } from './sheet-queries.ts'
import { type Stage, stateOf } from './sheet-states.ts'

/** The sheets in these states, or all, the latest first. */
export function listSheets(
  database: ReadableDatabase,
  { states = [...allStates], supplier, most }: CheckedInput<'order-sheets.list-sheets'>,
): SheetSummary[] {
  const isAnyState = states.length === allStates.length
  return listStoredSheets(database, {
    // Which of those that were sent are in a state asked for only their receipts tell.
    most: isAnyState ? most : anyNumber,
    stages: [...new Set(states.flatMap(state => stagesOf[state]))],
    supplierId: supplier === undefined ? null : supplierNamed(database, supplier).supplierId,
  })
    .filter(sheet => states.includes(stateOf(sheet)))
    .slice(0, most)
    .map(sheet => summariseSheet(database, sheet))
}

const anyNumber = -1

/** At which stages a sheet in a state can be: one whose remainders were all closed was brought to be sent. */
const stagesOf: Record<SheetState, readonly Stage[]> = {
  draft: ['draft'],
  checked: ['checked'],
  sent: ['sent'],
  'part-received': ['sent'],
  received: ['sent'],
  cancelled: ['cancelled', 'sent'],
}

const allStates = Object.keys(stagesOf) as SheetState[]
