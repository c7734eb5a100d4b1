import { outsidePlace } from '../../shared-schemas/stock-ledger.ts'
import { findPartByNumber, listNearestPartNumbers, type Part } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { listLocations } from './location-queries.ts'
import type { Place } from './places.ts'

/** The location with this name, however it is written. */
export function locationNamed(database: ReadableDatabase, typed: string) {
  const locations = listLocations(database)
  const found = locations.find(({ location }) => location.toUpperCase() === typed.toUpperCase())
  if (found === undefined)
    throw new Refusal({ code: 'location-not-found', typed, known: locations.map(({ location }) => location) })
  return found
}

/** A location of the shop, or one of the words for a place outside. A location of the same name goes first. */
export function placeNamed(database: ReadableDatabase, typed: string): Place {
  const outside = outsidePlace.safeParse(typed.toLowerCase())
  const locations = listLocations(database)
  const found = locations.find(({ location }) => location.toUpperCase() === typed.toUpperCase())
  if (found !== undefined) return { locationId: found.locationId, outside: null }
  if (outside.success) return { locationId: null, outside: outside.data }
  const known = [...locations.map(({ location }) => location), ...movableOutside]
  throw new Refusal({ code: 'location-not-found', typed, known })
}

/** Counts and opening stock are booked by their own ways. */
const movableOutside = ['supplier', 'customer', 'job', 'scrap']

export function partNumbered(database: ReadableDatabase, typed: string): Part {
  const found = findPartByNumber(database, typed)
  if (found === undefined)
    throw new Refusal({ code: 'part-not-found', typed, nearest: listNearestPartNumbers(database, typed) })
  return found
}

/** The quarantine that was named, or the first that there is. */
export function quarantineNamed(database: ReadableDatabase, typed: string | undefined): string {
  const found =
    typed === undefined
      ? listLocations(database).find(({ kind }) => kind === 'quarantine')
      : locationNamed(database, typed)
  if (found?.kind !== 'quarantine') throw new Refusal({ code: 'quarantine-needed', typed: typed ?? null })
  return found.location
}
