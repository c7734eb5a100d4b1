import type { PartLife } from '../../../shared-schemas/stock-levels.ts'
import type { Series } from './gather-series.ts'

/**
 * Where a part is in its life: `new` was first asked for within the last quarter of a year, and the history is longer;
 * `dead` has not been asked for within two years. These spans are common practice for slow spares.
 */
export function lifeOfPart(series: Series, daysPerBucket: number): Exclude<PartLife, 'replaced'> {
  const first = series.findIndex(demand => demand > 0)
  if (first === -1) return 'unused'
  const last = series.findLastIndex(demand => demand > 0)
  const daysSince = (at: number) => (series.length - at) * daysPerBucket
  if (daysSince(last) > 730 + daysPerBucket) return 'dead'
  return first > 0 && daysSince(first) <= 91 + daysPerBucket / 2 ? 'new' : 'current'
}
