import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { locationNamed, partNumbered } from './named-things.ts'
import { listOnHand } from './on-hand-queries.ts'
import { readReserved } from './reservation-queries.ts'

/** The book now, or as it was at the end of a day; what is kept for somebody is known only for now. */
export function handleListOnHand(
  database: ReadableDatabase,
  { location, part, asOf }: CheckedInput<'stock-ledger.list-on-hand'>,
): Output<'stock-ledger.list-on-hand'> {
  const reserved = asOf === undefined ? readReserved(database) : new Map<string, number>()
  const found = listOnHand(database, {
    locationId: location === undefined ? null : locationNamed(database, location).locationId,
    partId: part === undefined ? null : partNumbered(database, part).partId,
    before: asOf === undefined ? null : dayAfter(asOf),
  })
  return {
    rows: found.map(({ location, partNumber, bin, quantity }) => ({
      location,
      partNumber,
      bin,
      quantity,
      reserved: reserved.get(`${location}\n${partNumber}`) ?? 0,
    })),
  }
}

/** Midnight here after the day, as the moments of movements are written: in UTC. */
function dayAfter(day: string): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  return new Date(year, month - 1, date + 1).toISOString()
}
