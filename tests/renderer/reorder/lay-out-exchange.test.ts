import { expect, test } from 'vitest'
import { layOutExchange } from '../../../renderer/reorder/lay-out-exchange.ts'
import type { PlayedSetting } from '../../../shared-schemas/reorder-back-test.ts'

const point = (targetFillRate: number | null, stockPieces: number, fillRate: number): PlayedSetting => ({
  ...{ targetFillRate, stockPieces, fillRate, stockValue: '0.00', orders: 1, piecesOrdered: 1 },
})

test('more stock stands further right and a higher fill rate further up, each point with its aim', () => {
  const { points, labels, width, height } = layOutExchange([point(0.9, 100, 0.88), point(0.95, 150, 0.94)])
  const [first, second] = points
  expect(first?.x).toBeLessThan(second?.x ?? 0)
  expect(first?.y).toBeGreaterThan(second?.y ?? height)
  expect(labels.map(({ text }) => text)).toEqual(['90.0 %', '95.0 %'])
  for (const { x, y } of labels) {
    expect(x).toBeGreaterThan(0)
    expect(x).toBeLessThan(width)
    expect(y).toBeGreaterThan(0)
  }
})

test('points that do not differ stand in the middle, and one without an aim has no word', () => {
  const { points, labels, width } = layOutExchange([point(null, 100, 0.9), point(0.9, 100, 0.9)])
  expect(points.map(({ x }) => x)).toEqual([width / 2, width / 2])
  expect(labels).toHaveLength(1)
})
