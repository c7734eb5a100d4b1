import type { CheckedInput } from '../../../shared-schemas/index.ts'
import type { PartReturn } from '../../../shared-schemas/returns.ts'
import { inTransaction, type ReadableDatabase } from '../../database/handles.ts'
import type { HandlersOf } from '../../requests/handlers.ts'
import { orRefuse, Refusal } from '../../requests/refusal.ts'
import { quarantineNamed } from '../named-things.ts'
import { type RecordingShop, recordWithin } from '../record-movement.ts'
import { planDecision } from './plan-decision.ts'
import { appendDecision, appendReturn, findReturn, listReturns } from './return-queries.ts'

/** What returns need of the shop and of the fit check, handed in by `application.ts`. */
export interface ReturnsShop extends RecordingShop {
  /** Records that a part did not fit a model that is settled. Gives the record's id. */
  readonly recordWrongFit: (told: {
    readonly model: string
    readonly brand?: string | undefined
    readonly part: string
    readonly job?: string | undefined
    readonly reason: string
    readonly initials: string
  }) => string
}

export function returnsHandlers(shop: ReturnsShop): HandlersOf<'returns'> {
  return {
    'returns.take-return': input => takeReturn(shop, input),
    'returns.decide-return': input => decideReturn(shop, input),
    'returns.list-returns': ({ state, most }) => {
      const found = listReturns(shop.database, { onlyUndecided: state === 'undecided', most: most + 1 })
      return { returns: found.slice(0, most), more: found.length > most }
    },
  }
}

/** Takes a part back into quarantine; a wrong fit is recorded with it, or neither is. */
function takeReturn(shop: ReturnsShop, input: CheckedInput<'returns.take-return'>): PartReturn {
  return inTransaction(shop.database, database => {
    const { kind, part, quantity, from, reference, reason, initials } = input
    const movement = recordWithin(database, shop, {
      ...{
        part,
        quantity,
        from,
        reason,
        reference,
        initials,
        to: quarantineNamed(database, input.quarantine),
      },
      ...{ usedBeforeBooked: false, takeReserved: false },
    })
    const returnId = appendReturn(database, shop, {
      ...{ kind, movementId: movement.movementId, initials },
      fitRecordId: kind === 'wrong-fit' ? recordWrongFit(shop, input) : null,
    })
    return returnNamed(database, returnId)
  })
}

function recordWrongFit(shop: ReturnsShop, input: CheckedInput<'returns.take-return'>): string {
  const { model, brand, part, reason, initials, from, reference } = input
  if (model === undefined || model.trim() === '') throw new Refusal({ code: 'appliance-needed', part })
  const job = from.toLowerCase() === 'job' ? reference : undefined
  return shop.recordWrongFit({ model, brand, part, job, reason, initials })
}

/** Decides about pieces of a return: one movement out of quarantine. */
function decideReturn(shop: ReturnsShop, input: CheckedInput<'returns.decide-return'>): PartReturn {
  return inTransaction(shop.database, database => {
    const { returnId, way, reason, reference, initials } = input
    const before = returnNamed(database, returnId)
    const { quantity, to } = orRefuse(
      planDecision(before.undecided, { returnId, way, quantity: input.quantity, to: input.to }),
    )
    const { movementId } = recordWithin(database, shop, {
      ...{ part: before.partNumber, quantity, from: before.quarantine, to, reason, reference, initials },
      ...{ usedBeforeBooked: false, takeReserved: false },
    })
    appendDecision(database, shop, { returnId, way, movementId, initials })
    return returnNamed(database, returnId)
  })
}

function returnNamed(database: ReadableDatabase, returnId: string): PartReturn {
  const found = findReturn(database, returnId)
  if (found === undefined) throw new Refusal({ code: 'return-not-found', returnId })
  return found
}
