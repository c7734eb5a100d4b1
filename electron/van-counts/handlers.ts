import type { HandlersOf } from '../requests/handlers.ts'
import { locationNamed } from '../stock-ledger/named-things.ts'
import type { RecordingShop } from '../stock-ledger/record-movement.ts'
import { listShortages, readTopUp, recordTopUp } from './handle-top-up.ts'
import { listCounts } from './list-counts.ts'
import { postCount } from './post-count.ts'
import { readCount } from './read-count.ts'
import { beginCount, explainVariance, recordReading, withdrawReading } from './record-reading.ts'

export function vanCountsHandlers(shop: RecordingShop): HandlersOf<'van-counts'> {
  const { database } = shop
  return {
    'van-counts.begin-count': input => beginCount(shop, input),
    'van-counts.record-reading': input => recordReading(shop, input),
    'van-counts.withdraw-reading': input => withdrawReading(shop, input),
    'van-counts.read-count': input => readCount(database, input),
    'van-counts.explain-variance': input => explainVariance(shop, input),
    'van-counts.post-count': input => postCount(shop, input),
    'van-counts.read-top-up': input => readTopUp(database, input),
    'van-counts.list-shortages': input => listShortages(database, input),
    'van-counts.record-top-up': input => recordTopUp(shop, input),
    'van-counts.list-counts': ({ location }) =>
      listCounts(database, location === undefined ? null : locationNamed(database, location).locationId),
  }
}
