import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { inTransaction } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { listLocations } from '../stock-ledger/location-queries.ts'
import { locationNamed } from '../stock-ledger/named-things.ts'
import { type RecordingShop, recordWithin } from '../stock-ledger/record-movement.ts'
import { findSpares } from './find-spares.ts'
import { planAllTopUps } from './plan-all-top-ups.ts'
import { planTopUp } from './plan-top-up.ts'
import { readTopUpFacts } from './top-up-queries.ts'

/** What brings a van back to its list. */
export function readTopUp(
  database: ReadableDatabase,
  { van, prefer }: CheckedInput<'van-counts.read-top-up'>,
): Output<'van-counts.read-top-up'> {
  const { locationId, location } = vanNamed(database, van)
  const facts = readTopUpFacts(database, locationId, prefer)
  const { lines, shortages, leftovers } = planTopUp(facts)
  const others = shortages.length === 0 ? [] : listVans(database).filter(other => other.location !== location)
  const spare = others.map(other => ({
    van: other.location,
    leftovers: planTopUp(readTopUpFacts(database, other.locationId, prefer)).leftovers,
  }))
  return {
    van: location,
    lines: [...lines],
    shortages: shortages.map(({ line: { name, level }, has, missing }) => ({
      ...{ wanted: name, level, has, missing },
    })),
    leftovers: leftovers.map(({ partNumber, quantity }) => ({ partNumber, quantity })),
    spares: findSpares(shortages, spare, facts),
  }
}

/** What the shop cannot give to all vans together: what the reorder has to bring. */
export function listShortages(
  database: ReadableDatabase,
  { prefer }: CheckedInput<'van-counts.list-shortages'>,
): Output<'van-counts.list-shortages'> {
  const vans = listVans(database).map(({ location, locationId }) => ({
    van: location,
    ...readTopUpFacts(database, locationId, prefer),
  }))
  return {
    shortages: planAllTopUps(vans, vans[0]?.inShop ?? []).flatMap(({ van, plan }) =>
      plan.shortages.map(({ line, missing }) => ({
        ...{ van, missing },
        family: line.partId === null ? line.name : null,
        partNumber: line.partId === null ? null : line.name,
      })),
    ),
  }
}

function listVans(database: ReadableDatabase) {
  return listLocations(database).filter(({ kind }) => kind === 'van')
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
