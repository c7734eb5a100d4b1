import type { CheckedInput } from '../../shared-schemas/index.ts'
import type { Movement } from '../../shared-schemas/stock-ledger.ts'
import { inTransaction, type WritableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { appendMovement, type MovementStamp } from './append-movements.ts'
import { findStoredMovement, readMovement } from './movement-queries.ts'
import { kindOfMovement, type Place } from './places.ts'
import type { RecordingShop } from './record-movement.ts'

/**
 * Takes a movement back by one the other way, which names it. The book may go below zero by it: what was booked wrongly
 * was never there. What was reversed is not reversed again, nor is a reversal; a count is corrected by counting, and the
 * opening stock by loading it anew.
 */
export function reverseMovement(
  shop: RecordingShop,
  asked: CheckedInput<'stock-ledger.reverse-movement'>,
): Movement {
  return inTransaction(shop.database, database => reverseWithin(database, shop, asked))
}

/** Takes a movement back among others that stand or fall with it. */
export function reverseWithin(
  database: WritableDatabase,
  shop: MovementStamp,
  { movementId, reason, initials = '' }: CheckedInput<'stock-ledger.reverse-movement'>,
): Movement {
  const before = findStoredMovement(database, movementId)
  if (before === undefined) throw new Refusal({ code: 'movement-not-found', movementId })
  if (before.reverses !== null) throw new Refusal({ code: 'movement-is-reversal', movementId })
  if (before.reversedBy !== null)
    throw new Refusal({ code: 'movement-reversed-already', movementId, by: before.reversedBy })
  if (before.outside === 'count' || before.outside === 'opening')
    throw new Refusal({ code: 'movement-stands', movementId, outside: before.outside })
  const place = (locationId: number | null): Place =>
    locationId === null
      ? { locationId: null, outside: before.outside ?? 'count' }
      : { locationId, outside: null }
  const [from, to] = [place(before.toLocationId), place(before.fromLocationId)]
  const reversal = appendMovement(database, shop, {
    ...before,
    // A receipt of opening stock, or a part scrapped, comes back by a way that the trade has no word for.
    kind: kindOfMovement(from, to) ?? 'adjustment',
    fromLocationId: before.toLocationId,
    toLocationId: before.fromLocationId,
    initials,
    reason,
    reverses: movementId,
    usedBeforeBooked: false,
  })
  return readMovement(database, reversal)
}
