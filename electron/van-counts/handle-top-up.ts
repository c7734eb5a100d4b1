import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { inTransaction } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { locationNamed } from '../stock-ledger/named-things.ts'
import { type RecordingShop, recordWithin } from '../stock-ledger/record-movement.ts'
import { planTopUp } from './plan-top-up.ts'
import { readTopUpFacts } from './top-up-queries.ts'

/** What brings a van back to its list. */
export function readTopUp(
  database: ReadableDatabase,
  { van, prefer }: CheckedInput<'van-counts.read-top-up'>,
): Output<'van-counts.read-top-up'> {
  const { locationId, location } = vanNamed(database, van)
  const { lines, shortages, leftovers } = planTopUp(readTopUpFacts(database, locationId, prefer))
  return { van: location, lines: [...lines], shortages: [...shortages], leftovers: [...leftovers] }
}

/** Books what was put into the van or brought back. */
export function recordTopUp(
  shop: RecordingShop,
  { van, lines, initials }: CheckedInput<'van-counts.record-top-up'>,
): Output<'van-counts.record-top-up'> {
  return inTransaction(shop.database, database => {
    const { location } = vanNamed(database, van)
    for (const { part, quantity, location: shelf, way } of lines)
      recordWithin(database, shop, {
        ...{ part, quantity, usedBeforeBooked: false, takeReserved: false },
        ...(way === 'into-van'
          ? { from: shelf, to: location, reason: 'top-up' }
          : { from: location, to: shelf, reason: 'brought back' }),
        ...(initials === undefined ? {} : { initials }),
      })
    return { movements: lines.length }
  })
}

function vanNamed(database: ReadableDatabase, typed: string) {
  const found = locationNamed(database, typed)
  if (found.kind !== 'van') throw new Refusal({ code: 'location-not-van', location: found.location })
  return found
}
