import type { PartId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { readLastCosts } from './stock-value-queries.ts'

/** What was paid last for one piece of each part, in the currency of most suppliers: that is the one that the book is kept in. */
export function readLastPaid(
  database: ReadableDatabase,
  partIds: readonly PartId[],
): ReadonlyMap<PartId, { readonly price: string; readonly currency: string }> {
  const currency = readBookCurrency(database)
  if (currency === undefined) return new Map()
  const costs = readLastCosts(database, partIds)
  return new Map(
    partIds.flatMap(id => {
      const price = costs.get(id)
      return price === undefined ? [] : [[id, { price, currency }] as const]
    }),
  )
}

/** The currency that the book is kept in: that of most suppliers. */
export function readBookCurrency(database: ReadableDatabase): string | undefined {
  const [usual] = database.tuples<[string]>(
    'SELECT currency FROM supplier GROUP BY currency ORDER BY count(*) DESC, currency LIMIT 1',
  )
  return usual?.[0]
}
