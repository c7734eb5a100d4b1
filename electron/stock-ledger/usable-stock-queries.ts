import type { PartId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { listLocations } from './location-queries.ts'
import { type PlaceOnHand, readPartsOnHand } from './on-hand-queries.ts'

/** Where each of these parts can be taken from: what stands in quarantine is nobody's to use. */
export function readUsableStock(
  database: ReadableDatabase,
  partIds: readonly PartId[],
): ReadonlyMap<PartId, readonly PlaceOnHand[]> {
  const quarantine = new Set(
    listLocations(database).flatMap(({ kind, location }) => (kind === 'quarantine' ? [location] : [])),
  )
  const usable = [...readPartsOnHand(database, partIds)].map(
    ([id, places]) => [id, places.filter(({ location }) => !quarantine.has(location))] as const,
  )
  return new Map(usable)
}
