import { listSuppliers } from '../catalogue/supplier-queries.ts'
import { inOneRead, inTransaction } from '../database/handles.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import { orRefuse, Refusal } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { subjectOf } from './apply-overrides.ts'
import { checkOrder } from './check-order.ts'
import type { ToldOfParts } from './gather-line-facts.ts'
import { appendOverride } from './order-check-queries.ts'
import { readOrderText } from './read-order-text.ts'

export type OrderCheckNeeds = Pick<Shop, 'database' | 'now' | 'newId' | 'device'> & ToldOfParts

export function orderCheckHandlers(needs: OrderCheckNeeds): HandlersOf<'order-check'> {
  const { database, now, newId, device } = needs
  return {
    'order-check.read-order': text => ({ lines: orRefuse(readOrderText(text)) }),
    'order-check.list-suppliers': () => ({
      suppliers: listSuppliers(database).map(({ supplier, name }) => ({ supplier, name })),
    }),
    'order-check.check-order': order => inOneRead(database, () => checkOrder(database, needs, order).checked),
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
