import type { CheckedInput } from '../../shared-schemas/index.ts'
import type { Movement } from '../../shared-schemas/stock-ledger.ts'
import { type DatabaseHandle, inTransaction, type WritableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { appendMovement, type MovementStamp, plainMovement } from './append-movements.ts'
import { readMovement } from './movement-queries.ts'
import { locationNamed, partNumbered, placeNamed } from './named-things.ts'
import { readOnHand } from './on-hand-queries.ts'
import { kindOfMovement } from './places.ts'
import { readReservedForOthers, takeReserved } from './reservation-queries.ts'

export interface RecordingShop extends MovementStamp {
  readonly database: DatabaseHandle
}

type Asked = CheckedInput<'stock-ledger.record-movement'>

/**
 * Records a movement. The book of a place does not go below zero unless it is said that the part was used before it was
 * booked; and what is kept for somebody else is not taken unless that too is said.
 */
export function recordMovement(shop: RecordingShop, asked: Asked): Movement {
  return inTransaction(shop.database, database => recordWithin(database, shop, asked))
}

/** Records a movement among others that stand or fall with it. */
export function recordWithin(database: WritableDatabase, shop: MovementStamp, asked: Asked): Movement {
  const part = partNumbered(database, asked.part)
  const [from, to] = [placeNamed(database, asked.from), placeNamed(database, asked.to)]
  const kind = kindOfMovement(from, to)
  if (kind === undefined || isBookedOtherwise(asked.from) || isBookedOtherwise(asked.to))
    throw new Refusal({ code: 'no-such-movement', from: asked.from, to: asked.to })
  const outside = from.outside ?? to.outside
  const reference = asked.reference ?? null
  if ((outside === 'job' || outside === 'customer') && reference === null)
    throw new Refusal({ code: 'reference-needed', outside })
  const leaves = from.locationId === null ? undefined : { locationId: from.locationId, partId: part.partId }
  const isShort = leaves !== undefined && refuseShort(database, asked, leaves)
  const movementId = appendMovement(database, shop, {
    ...plainMovement,
    kind,
    partId: part.partId,
    quantity: asked.quantity,
    fromLocationId: from.locationId,
    toLocationId: to.locationId,
    outside,
    initials: asked.initials ?? '',
    reason: asked.reason,
    reference,
    unitCost: asked.unitCost ?? null,
    usedBeforeBooked: isShort,
  })
  if (leaves !== undefined && reference !== null)
    takeReserved(database, shop, {
      ...leaves,
      reference,
      quantity: asked.quantity,
      initials: asked.initials ?? '',
    })
  return readMovement(database, movementId)
}

/** A count and the opening stock write their own adjustments, with what they were reckoned from. */
function isBookedOtherwise(place: string): boolean {
  return ['count', 'opening'].includes(place.toLowerCase())
}

/** Whether the book goes below zero; refused unless it was said that it may. */
function refuseShort(
  database: WritableDatabase,
  asked: Asked,
  { locationId, partId }: { readonly locationId: number; readonly partId: number },
): boolean {
  const onHand = readOnHand(database, locationId, partId)
  const { location } = locationNamed(database, asked.from)
  if (asked.quantity > onHand && !asked.usedBeforeBooked)
    throw new Refusal({
      code: 'not-enough-on-hand',
      part: asked.part,
      location,
      onHand,
      wanted: asked.quantity,
    })
  const kept = readReservedForOthers(database, { locationId, partId, reference: asked.reference ?? null })
  if (asked.quantity <= onHand && asked.quantity > onHand - kept.quantity && !asked.takeReserved)
    throw new Refusal({
      code: 'kept-for-others',
      part: asked.part,
      location,
      free: onHand - kept.quantity,
      references: kept.references,
    })
  return asked.quantity > onHand
}
