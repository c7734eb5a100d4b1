import type { Output } from '../../shared-schemas/index.ts'

type PastCount = Output<'van-counts.list-counts'>['counts'][number]

export interface Trend {
  readonly location: string
  /** The last posted counts of it, the oldest first. */
  readonly counts: readonly { readonly countId: string; readonly day: string; readonly accuracy: number }[]
}

/** How right the book of each place was, count by count; counts that were not posted say nothing yet. */
export function listTrends(counts: readonly PastCount[], most = 6): Trend[] {
  const posted = counts.flatMap(({ countId, location, postedAt, recordAccuracy }) =>
    postedAt === null || recordAccuracy === null
      ? []
      : [{ location, countId, day: postedAt.slice(0, 10), accuracy: recordAccuracy }],
  )
  return [...Map.groupBy(posted, ({ location }) => location)]
    .map(([location, found]) => ({ location, counts: found.slice(0, most).reverse() }))
    .sort((one, other) => one.location.localeCompare(other.location))
}
