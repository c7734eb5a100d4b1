import type { CheckedInput } from '../../shared-schemas/index.ts'
import type { Reservation } from '../../shared-schemas/stock-ledger.ts'
import { inTransaction } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { locationNamed, partNumbered } from './named-things.ts'
import { readOnHand } from './on-hand-queries.ts'
import type { RecordingShop } from './record-movement.ts'
import {
  appendReservation,
  endReservation,
  listReservations,
  readReservedForOthers,
} from './reservation-queries.ts'

/** Keeps pieces for a job or a customer: only what is on hand and not kept for somebody already. */
export function reservePart(
  shop: RecordingShop,
  { part, location, quantity, heldFor, reference, initials = '' }: CheckedInput<'stock-ledger.reserve-part'>,
): Reservation {
  return inTransaction(shop.database, database => {
    const [{ partId }, { locationId }] = [partNumbered(database, part), locationNamed(database, location)]
    const kept = readReservedForOthers(database, { locationId, partId, reference: null })
    const free = readOnHand(database, locationId, partId) - kept.quantity
    if (quantity > free)
      throw new Refusal({ code: 'kept-for-others', part, location, free, references: kept.references })
    const reservationId = appendReservation(database, shop, {
      ...{ partId, locationId, quantity, heldFor, reference, initials },
    })
    return onlyReservation(listReservations(database, { reservationId }), reservationId)
  })
}

/** Frees what was kept. */
export function releaseReservation(
  shop: RecordingShop,
  { reservationId, initials = '' }: CheckedInput<'stock-ledger.release-reservation'>,
): Reservation {
  return inTransaction(shop.database, database => {
    const reservation = onlyReservation(listReservations(database, { reservationId }), reservationId)
    endReservation(database, shop, { reservationId, how: 'released', initials })
    return reservation
  })
}

function onlyReservation([found]: readonly Reservation[], reservationId: string): Reservation {
  if (found === undefined) throw new Refusal({ code: 'reservation-not-open', reservationId })
  return found
}
