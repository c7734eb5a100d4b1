import type { CheckedOrder, OrderLine } from '../../shared-schemas/order-check.ts'
import { normaliseNumber } from '../catalogue/normalise-number.ts'
import { supplierNamed } from '../catalogue/supplier-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { checkLines } from './check-lines.ts'
import { gatherLineFacts, type ToldOfParts } from './gather-line-facts.ts'
import type { LineFacts } from './line-facts.ts'
import { readOverrides } from './order-check-queries.ts'

export interface DraftOrder {
  readonly lines: readonly OrderLine[]
  readonly supplier?: string | undefined
}

/** Every line of an order with what the rules find on it, and the facts that they went by. */
export function checkOrder(
  database: ReadableDatabase,
  told: ToldOfParts,
  { lines, supplier: typed }: DraftOrder,
): {
  readonly checked: CheckedOrder
  readonly facts: readonly LineFacts[]
  readonly supplier: string | undefined
} {
  const supplier = typed === undefined ? undefined : supplierNamed(database, typed).supplier
  const facts = gatherLineFacts(database, told, lines)
  const keys = facts.map(({ part, given }) => normaliseNumber(part?.partNumber ?? given.partNumber))
  const overrides = readOverrides(database, [...new Set(keys)])
  return { checked: checkLines({ lines: facts, supplier, overrides }), facts, supplier }
}
