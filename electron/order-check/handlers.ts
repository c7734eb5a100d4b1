import type { CheckedOrder, OrderLine } from '../../shared-schemas/order-check.ts'
import { normaliseNumber } from '../catalogue/normalise-number.ts'
import { inTransaction, type ReadableDatabase } from '../database/handles.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import { orRefuse, Refusal } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { subjectOf } from './apply-overrides.ts'
import { checkLines } from './check-lines.ts'
import { gatherLineFacts, type ToldOfParts } from './gather-line-facts.ts'
import type { LineFacts } from './line-facts.ts'
import { appendOverride, listSuppliers, readOverrides } from './order-check-queries.ts'
import { readOrderText } from './read-order-text.ts'

export type OrderCheckNeeds = Pick<Shop, 'database' | 'now' | 'newId' | 'device'> & ToldOfParts

export function orderCheckHandlers(needs: OrderCheckNeeds): HandlersOf<'order-check'> {
  const { database, now, newId, device } = needs
  return {
    'order-check.read-order': text => ({ lines: orRefuse(readOrderText(text)) }),
    'order-check.list-suppliers': () => ({ suppliers: listSuppliers(database) }),
    'order-check.check-order': order => checkOrder(database, needs, order).checked,
    'order-check.override-stop': ({ line, supplier, code, reason, initials }) => {
      const { checked, facts, supplier: named } = checkOrder(database, needs, { lines: [line], supplier })
      const [only] = facts
      const stop = checked.lines[0]?.flags.find(found => found.code === code)
      if (only === undefined || stop === undefined || (stop.severity !== 'stop' && !stop.override))
        throw new Refusal({ code: 'stop-not-found', stop: code, partNumber: line.partNumber })
      if (stop.mayOverride === false)
        throw new Refusal({ code: 'stop-not-overridable', stop: code, why: stop.text })
      const override = { overrideId: newId(), recordedAt: now().toISOString() }
      inTransaction(database, writable =>
        appendOverride(writable, {
          ...subjectOf(only, code, named),
          ...override,
          partNumber: only.part?.partNumber ?? line.partNumber,
          reason,
          initials: initials.toUpperCase(),
          device,
        }),
      )
      return override
    },
  }
}

interface DraftOrder {
  readonly lines: readonly OrderLine[]
  readonly supplier?: string | undefined
}

function checkOrder(
  database: ReadableDatabase,
  told: ToldOfParts,
  { lines, supplier: typed }: DraftOrder,
): {
  readonly checked: CheckedOrder
  readonly facts: readonly LineFacts[]
  readonly supplier: string | undefined
} {
  const supplier = typed === undefined ? undefined : supplierNamed(database, typed)
  const facts = gatherLineFacts(database, told, lines)
  const keys = facts.map(({ part, given }) => normaliseNumber(part?.partNumber ?? given.partNumber))
  const overrides = readOverrides(database, [...new Set(keys)])
  return { checked: checkLines({ lines: facts, supplier, overrides }), facts, supplier }
}

function supplierNamed(database: ReadableDatabase, typed: string): string {
  const suppliers = listSuppliers(database)
  const found = suppliers.find(({ supplier }) => supplier.toUpperCase() === typed.toUpperCase())
  if (found === undefined)
    throw new Refusal({
      code: 'supplier-not-found',
      typed,
      known: suppliers.map(({ supplier }) => supplier),
    })
  return found.supplier
}
