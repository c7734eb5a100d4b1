import type { UsedOnDay } from './demand-queries.ts'
import { netReturns } from './net-returns.ts'
import { bucketOf, type TimeBuckets } from './time-buckets.ts'

/** Pieces asked for by bucket, the earliest first; `unknown` where the part was out of stock and nobody can tell. */
export type Series = Int32Array
export const unknown = -1

export interface DemandSources {
  readonly usage: Iterable<UsedOnDay>
  readonly issued: Iterable<UsedOnDay>
  /** The number that a part's history counts for today. */
  readonly countsFor: (partId: number) => number
}

/**
 * The demand of each part by bucket. Imported usage speaks for a place until the ledger first books something out there.
 * From then on both may tell of the same piece, so of a part at a place in a bucket the larger figure counts. Returns
 * are taken off what was asked for before them.
 */
export function gatherSeries(buckets: TimeBuckets, sources: DemandSources): Map<number, Series> {
  const series = new Map<number, Series>()
  let last: { readonly partId: number; readonly own: Series } | undefined
  const add = (partId: number, at: number, quantity: number) => {
    // Rows come part by part, so the series is mostly that of the row before.
    if (last?.partId !== partId) last = { partId, own: seriesOf(sources.countsFor(partId)) }
    last.own[at] = (last.own[at] ?? 0) + quantity
  }
  const seriesOf = (part: number): Series => {
    const own = series.get(part) ?? new Int32Array(buckets.starts.length)
    series.set(part, own)
    return own
  }
  const { ledgerFrom, booked } = gatherIssued(buckets, sources.issued)
  for (const [partId, locationId, day, quantity] of sources.usage) {
    const at = bucketOf(buckets, day)
    if (at < 0) continue
    const both =
      day < (ledgerFrom.get(locationId) ?? Number.POSITIVE_INFINITY)
        ? undefined
        : booked.get(keyOf(partId, locationId, at))
    if (both === undefined) add(partId, at, quantity)
    else both.imported += quantity
  }
  for (const { partId, at, ledger, imported } of booked.values()) add(partId, at, Math.max(ledger, imported))
  for (const own of series.values()) netReturns(own)
  return series
}

interface Booked {
  readonly partId: number
  readonly at: number
  ledger: number
  imported: number
}

function keyOf(partId: number, locationId: number, at: number): string {
  return `${partId} ${locationId} ${at}`
}

function gatherIssued(buckets: TimeBuckets, issued: Iterable<UsedOnDay>) {
  const ledgerFrom = new Map<number, number>()
  const booked = new Map<string, Booked>()
  for (const [partId, locationId, day, quantity] of issued) {
    ledgerFrom.set(locationId, Math.min(day, ledgerFrom.get(locationId) ?? day))
    const at = bucketOf(buckets, day)
    if (at < 0) continue
    const key = keyOf(partId, locationId, at)
    const before = booked.get(key)
    if (before === undefined) booked.set(key, { partId, at, ledger: quantity, imported: 0 })
    else before.ledger += quantity
  }
  return { ledgerFrom, booked }
}
