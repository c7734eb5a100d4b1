import { Big } from 'big.js'
import { partId } from '../../shared-schemas/identifiers.ts'
import { readLowestOffers } from '../catalogue/offer-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { readLastCosts } from '../stock-ledger/stock-value-queries.ts'
import { classifyByValue, type ValueClass } from './tolerance.ts'

/** What one piece of each part is worth: what was paid last, or else the lowest price at which it is offered. */
export function readUnitValues(
  database: ReadableDatabase,
  partIds: readonly number[],
): ReadonlyMap<number, Big> {
  const costs = readLastCosts(database, partIds)
  const offers = readLowestOffers(
    database,
    partIds.map(id => partId.parse(id)),
  )
  return new Map(
    partIds.map(id => {
      const offer = offers.get(partId.parse(id))
      return [id, new Big(costs.get(id) ?? offer?.price ?? 0)]
    }),
  )
}

/** The value class of every part that was used in the year before a day; whatever was not used is C. */
export function readValueClasses(database: ReadableDatabase, day: string): ReadonlyMap<number, ValueClass> {
  const yearBefore = `${Number(day.slice(0, 4)) - 1}${day.slice(4)}`
  const used = [
    ...database.tuples<[number, number]>(
      `SELECT part_id, sum(quantity) FROM (
         SELECT part_id, quantity FROM usage WHERE date >= ?1
         UNION ALL
         SELECT part_id, quantity FROM movement WHERE kind = 'issue' AND recorded_at >= ?1)
       GROUP BY part_id HAVING sum(quantity) > 0`,
      yearBefore,
    ),
  ]
  const values = readUnitValues(
    database,
    used.map(([id]) => id),
  )
  return classifyByValue(
    used.map(([id, quantity]) => ({
      partId: id,
      yearlyValue: (values.get(id) ?? new Big(0)).times(quantity),
    })),
  )
}
