import type { PlayedSetting } from '../../shared-schemas/reorder-back-test.ts'
import type { Point } from './lay-out-chart.ts'

export interface ExchangeLayout {
  readonly width: number
  readonly height: number
  readonly points: readonly Point[]
  /** The aim of each point, beside it. */
  readonly labels: readonly (Point & { readonly text: string })[]
}

/** Stock across and fill rate up, in a drawing of 640 by 200, from the least to the most of each. */
export function layOutExchange(curve: readonly PlayedSetting[]): ExchangeLayout {
  const across = scale(
    curve.map(({ stockPieces }) => stockPieces),
    margin,
    width - margin,
  )
  const up = scale(
    curve.map(({ fillRate }) => fillRate),
    height - margin,
    margin,
  )
  const points = curve.map(({ stockPieces, fillRate }) => ({ x: across(stockPieces), y: up(fillRate) }))
  return {
    ...{ width, height, points },
    labels: curve.flatMap(({ targetFillRate }, at) => {
      const point = points[at]
      return targetFillRate === null || point === undefined
        ? []
        : [{ x: point.x, y: point.y - 6, text: `${(100 * targetFillRate).toFixed(1)} %` }]
    }),
  }
}

const width = 640
const height = 200
const margin = 28

/** Values of which all are the same stand in the middle. */
function scale(values: readonly number[], from: number, to: number): (value: number) => number {
  const [least, most] = [Math.min(...values), Math.max(...values)]
  return value => (most === least ? (from + to) / 2 : from + ((value - least) / (most - least)) * (to - from))
}
