import { expect, test } from 'vitest'
import { layOutChart, pathThrough } from '../../../renderer/reorder/lay-out-chart.ts'
import type { PartExplained } from '../../../shared-schemas/proposal.ts'

const explained: PartExplained = {
  ...{ partNumber: 'B-200', bucket: 'week', meanPerBucket: 1, reorderPoint: 2, orderUpTo: 4 },
  history: [
    { from: '2026-11-03', pieces: 2 },
    { from: '2026-11-10', pieces: null },
    { from: '2026-11-17', pieces: 0 },
  ],
  projected: [{ to: '2026-11-30', without: -1, with: 3 }],
}

test('a taller bar is more pieces, and none stands where it is not known how many were asked for', () => {
  const { bars, unknown, zero } = layOutChart(explained)
  expect(bars).toHaveLength(2)
  expect(bars[0]?.height).toBeGreaterThan(bars[1]?.height ?? 0)
  expect(bars.map(({ y, height }) => y + height)).toEqual([zero, zero])
  expect(unknown).toHaveLength(1)
})

test('more stock stands higher, what is owed below nothing, and all of it within the drawing', () => {
  const chart = layOutChart(explained)
  expect(chart.orderUpTo).toBeLessThan(chart.reorderPoint)
  expect(chart.reorderPoint).toBeLessThan(chart.zero)
  expect(chart.without[0]?.y).toBeGreaterThan(chart.zero)
  expect(chart.with[0]?.y).toBeLessThan(chart.zero)
  for (const { x, y } of [...chart.with, ...chart.without]) {
    expect(x).toBeGreaterThan(chart.today)
    expect(x).toBeLessThanOrEqual(chart.width)
    expect(y).toBeGreaterThanOrEqual(0)
    expect(y).toBeLessThanOrEqual(chart.height)
  }
})

test('a part without history or plans is still drawn', () => {
  const chart = layOutChart({ ...explained, history: [], projected: [], orderUpTo: 0, reorderPoint: 0 })
  expect(Number.isFinite(chart.zero)).toBe(true)
  expect(pathThrough(chart.with)).toBe('')
})
