import type { PartExplained } from '../../shared-schemas/proposal.ts'

export interface Point {
  readonly x: number
  readonly y: number
}

export interface ChartLayout {
  readonly width: number
  readonly height: number
  /** What was asked for, one bar a week or month; none where it is not known. */
  readonly bars: readonly (Point & { readonly width: number; readonly height: number })[]
  readonly unknown: readonly (Point & { readonly width: number })[]
  /** Stock to come, with the order and without. */
  readonly with: readonly Point[]
  readonly without: readonly Point[]
  /** Heights of the levels, of nothing, and of what is expected to be asked for. */
  readonly zero: number
  readonly reorderPoint: number
  readonly orderUpTo: number
  readonly forecast: number
  /** Where today is. */
  readonly today: number
  readonly most: number
}

/**
 * Where everything stands in a drawing of 640 by 200: the past on the left of today, what is to come on the right, where a
 * week is wider, since it is what is decided about.
 */
export function layOutChart({
  history,
  projected,
  meanPerBucket,
  reorderPoint,
  orderUpTo,
}: PartExplained): ChartLayout {
  const asked = history.map(({ pieces }) => pieces ?? 0)
  const ahead = projected.flatMap(point => [point.with, point.without])
  const most = Math.max(1, orderUpTo, meanPerBucket, ...asked, ...ahead)
  const least = Math.min(0, ...ahead)
  const step = today / Math.max(1, history.length)
  const stepAhead = (width - today) / Math.max(1, projected.length)
  const heightOf = (value: number) => margin + ((most - value) / (most - least)) * (height - 2 * margin)
  const zero = heightOf(0)
  const known = history.flatMap(({ pieces }, at) => (pieces === null ? [] : [{ pieces, at }]))
  const at = (place: number, value: number): Point => ({
    x: today + (place + 1) * stepAhead,
    y: heightOf(value),
  })
  return {
    ...{ width, height, zero, today, most },
    bars: known.map(({ pieces, at: place }) => ({
      ...{ x: place * step + step * 0.15, width: step * 0.7 },
      ...{ y: heightOf(pieces), height: zero - heightOf(pieces) },
    })),
    unknown: history.flatMap(({ pieces }, place) =>
      pieces === null ? [{ x: place * step, y: zero, width: step }] : [],
    ),
    with: projected.map((point, place) => at(place, point.with)),
    without: projected.map((point, place) => at(place, point.without)),
    reorderPoint: heightOf(reorderPoint),
    orderUpTo: heightOf(orderUpTo),
    forecast: heightOf(meanPerBucket),
  }
}

const width = 640
const today = 384
const height = 200
const margin = 20

/** A line through the points, as SVG writes it. */
export function pathThrough(points: readonly Point[]): string {
  return points.map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')
}
