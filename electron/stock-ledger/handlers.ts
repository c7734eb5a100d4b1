import { inTransaction } from '../database/handles.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import { attachCode } from './attach-code.ts'
import { exportLedger } from './export-ledger.ts'
import { findCode } from './find-code.ts'
import { handleListOnHand } from './handle-list-on-hand.ts'
import { releaseReservation, reservePart } from './handle-reservations.ts'
import { importLedger, type JoiningShop } from './import-ledger.ts'
import { listLedger } from './list-ledger.ts'
import { locationNamed, partNumbered } from './named-things.ts'
import { listOnHand } from './on-hand-queries.ts'
import { recordMovement } from './record-movement.ts'
import { listReservations } from './reservation-queries.ts'
import { reverseMovement } from './reverse-movement.ts'
import { readStockValue } from './stock-value-queries.ts'

export function stockLedgerHandlers(shop: JoiningShop): HandlersOf<'stock-ledger'> {
  const { database } = shop
  const partIdOf = (part: string | undefined) =>
    part === undefined ? undefined : partNumbered(database, part).partId
  const locationIdOf = (location: string | undefined) =>
    location === undefined ? undefined : locationNamed(database, location).locationId
  return {
    'stock-ledger.record-movement': input => ({ movement: recordMovement(shop, input) }),
    'stock-ledger.reverse-movement': input => ({ movement: reverseMovement(shop, input) }),
    'stock-ledger.list-movements': input => listLedger(database, input),
    'stock-ledger.list-on-hand': input => handleListOnHand(database, input),
    'stock-ledger.set-bin': ({ part, location, bin }) =>
      inTransaction(database, writable => {
        const [{ partId }, { locationId }] = [partNumbered(writable, part), locationNamed(writable, location)]
        writable.run(
          'INSERT INTO bin (location_id, part_id, bin) VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET bin = excluded.bin',
          locationId,
          partId,
          bin,
        )
        return { bin: bin === '' ? null : bin }
      }),
    'stock-ledger.reserve-part': input => ({ reservation: reservePart(shop, input) }),
    'stock-ledger.release-reservation': input => ({ reservation: releaseReservation(shop, input) }),
    'stock-ledger.list-reservations': ({ part, location, reference }) => ({
      reservations: listReservations(database, {
        partId: partIdOf(part),
        locationId: locationIdOf(location),
        reference,
      }),
    }),
    'stock-ledger.read-stock-value': ({ location }) =>
      readStockValue(
        database,
        listOnHand(database, { locationId: locationIdOf(location) ?? null, partId: null, before: null }),
      ),
    'stock-ledger.export-ledger': ({ file }) => exportLedger(shop, file),
    'stock-ledger.import-ledger': ({ file }) => importLedger(shop, file),
    'stock-ledger.list-conflicts': () => ({ conflicts: shop.joined.listConflicts(database) }),
    'stock-ledger.find-code': ({ code }) => ({ found: findCode(database, code) }),
    'stock-ledger.attach-code': input => attachCode(shop, input),
  }
}
