import type { Bucket } from '../../../shared-schemas/stock-levels.ts'
import type { ReadableDatabase } from '../../database/handles.ts'
import { readFirstDay, readIssued, readStockChanges, readUsage, readUsageDates } from './demand-queries.ts'
import { gatherSeries, type Series } from './gather-series.ts'
import { markOutOfStock, type StockChange } from './out-of-stock.ts'
import { dayNumberOf, daysPer, layOutBuckets, type TimeBuckets } from './time-buckets.ts'

export interface DemandAsked {
  readonly asOf: string
  readonly bucket: Bucket | undefined
  /** The number that a part's history and stock count for today. */
  readonly countsFor: (partId: number) => number
}

export interface ShopDemand {
  readonly buckets: TimeBuckets
  /** By the part that it counts for; a part that nobody ever asked for is left out. */
  readonly series: ReadonlyMap<number, Series>
}

/** What was asked for up to the end of a day, from imported usage and the ledger. Nothing later is read. */
export function readDemand(database: ReadableDatabase, { asOf, bucket, countsFor }: DemandAsked): ShopDemand {
  const kind = bucket ?? (isMonthly(database, asOf) ? 'month' : 'week')
  const last = dayNumberOf(asOf)
  const most = Math.round(longestHistoryDays / daysPer(kind))
  const buckets = layOutBuckets(kind, readFirstDay(database, asOf) ?? last + 1, last, most)
  const series = gatherSeries(buckets, {
    usage: readUsage(database, asOf),
    issued: readIssued(database, asOf),
    countsFor,
  })
  for (const [partId, changes] of gatherChanges(database, asOf, countsFor)) {
    const own = series.get(partId)
    if (own !== undefined) markOutOfStock(own, buckets, changes)
  }
  return { buckets, series }
}

/** What was asked for longer ago says nothing of today. */
const longestHistoryDays = 5 * 365

/** Usage that stands on one day of each month was added up by months before it came here. */
function isMonthly(database: ReadableDatabase, asOf: string): boolean {
  const { days, months } = readUsageDates(database, asOf)
  return months >= 3 && days <= months
}

function gatherChanges(
  database: ReadableDatabase,
  asOf: string,
  countsFor: (partId: number) => number,
): ReadonlyMap<number, StockChange[]> {
  const changes = new Map<number, StockChange[]>()
  for (const [partId, day, change] of readStockChanges(database, asOf)) {
    const part = countsFor(partId)
    const before = changes.get(part)
    if (before === undefined) changes.set(part, [{ day, change }])
    else before.push({ day, change })
  }
  for (const list of changes.values()) list.sort((one, other) => one.day - other.day)
  return changes
}
