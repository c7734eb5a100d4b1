import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { findStoredMovement, type ListedMovement, listMovements } from './movement-queries.ts'
import { locationNamed, partNumbered } from './named-things.ts'
import { readBalanceBefore } from './on-hand-queries.ts'

/** A page of the ledger. For one part each line tells what there was after it, in the shop or in the one place asked. */
export function listLedger(
  database: ReadableDatabase,
  { part, location, before: cursor, most }: CheckedInput<'stock-ledger.list-movements'>,
): Output<'stock-ledger.list-movements'> {
  const before = cursor ?? null
  if (before !== null && findStoredMovement(database, before) === undefined)
    throw new Refusal({ code: 'movement-not-found', movementId: before })
  const partId = part === undefined ? null : partNumbered(database, part).partId
  const place = location === undefined ? null : locationNamed(database, location)
  const found = listMovements(database, {
    partId,
    locationId: place?.locationId ?? null,
    before,
    most: most + 1,
  })
  const page = found.slice(0, most)
  let balance =
    partId === null
      ? null
      : readBalanceBefore(database, { partId, locationId: place?.locationId ?? null, before })
  const movements = page.map(({ crosses, ...line }) => {
    const told = { ...line, balance }
    if (balance !== null) balance -= changeBy({ ...line, crosses }, place?.location ?? null)
    return told
  })
  return { movements, more: found.length > most }
}

/** By how much a movement raised what one place holds, or the shop with its vans. */
function changeBy({ from, to, crosses, quantity }: ListedMovement, location: string | null): number {
  if (location !== null) return (to === location ? quantity : 0) - (from === location ? quantity : 0)
  return crosses === null ? 0 : crosses === 'in' ? quantity : -quantity
}
