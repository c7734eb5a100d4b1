import { findPartByNumber, listNearestPartNumbers } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import { Refusal } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { listLocations } from './location-queries.ts'
import { listOnHand } from './on-hand-queries.ts'

export function stockLedgerHandlers({ database }: Pick<Shop, 'database'>): HandlersOf<'stock-ledger'> {
  return {
    'stock-ledger.list-on-hand': ({ location, part }) => {
      const found = listOnHand(database, {
        locationId: location === undefined ? null : locationNamed(database, location),
        partId: part === undefined ? null : partNumbered(database, part),
      })
      const rows = found.map(({ location, partNumber, bin, quantity }) => ({
        location,
        partNumber,
        bin,
        quantity,
        reserved: 0,
      }))
      return { rows }
    },
  }
}

function locationNamed(database: ReadableDatabase, typed: string): number {
  const locations = listLocations(database)
  const found = locations.find(({ location }) => location.toUpperCase() === typed.toUpperCase())
  if (found === undefined)
    throw new Refusal({ code: 'location-not-found', typed, known: locations.map(({ location }) => location) })
  return found.locationId
}

function partNumbered(database: ReadableDatabase, typed: string): number {
  const found = findPartByNumber(database, typed)
  if (found === undefined)
    throw new Refusal({ code: 'part-not-found', typed, nearest: listNearestPartNumbers(database, typed) })
  return found.partId
}
