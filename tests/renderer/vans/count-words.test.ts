import { expect, test } from 'vitest'
import { wordShare } from '../../../renderer/vans/count-words.ts'
import { listTrends } from '../../../renderer/vans/list-trends.ts'

test.each([
  [1, '100 %'],
  [0.95, '95 %'],
  [57 / 60, '95 %'],
  [2 / 3, '66.6 %'],
  // Two lines of two thousand are off: that is not all of it.
  [0.9995, '99.9 %'],
  [0, '0 %'],
])('%d is %s', (share, words) => {
  expect(wordShare(share)).toBe(words)
})

const count = (location: string, postedAt: string | null, recordAccuracy: number | null) => ({
  ...{ countId: `${location} ${postedAt}`, location, begunAt: '', initials: '', lines: 1 },
  ...{ postedAt, recordAccuracy, valueGained: null, valueLost: null, reasons: [] },
})

test('a trend runs from the oldest to the latest of the last counts, place by place, without those not posted', () => {
  const counts = [
    count('van-2', null, null),
    count('van-2', '2026-11-20T09:00:00Z', 0.9),
    count('van-1', '2026-11-19T09:00:00Z', 1),
    count('van-2', '2026-11-13T09:00:00Z', 0.8),
    count('van-2', '2026-11-06T09:00:00Z', 0.7),
  ]
  expect(
    listTrends(counts, 2).map(({ location, counts }) => [location, counts.map(({ accuracy }) => accuracy)]),
  ).toEqual([
    ['van-1', [1]],
    ['van-2', [0.8, 0.9]],
  ])
})
