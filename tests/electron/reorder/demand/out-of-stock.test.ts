import { expect, test } from 'vitest'
import { markOutOfStock } from '../../../../electron/reorder/demand/out-of-stock.ts'
import { dayNumberOf, layOutBuckets } from '../../../../electron/reorder/demand/time-buckets.ts'

interface Given {
  readonly asked: readonly number[]
  readonly changes: readonly (readonly [date: string, change: number])[]
}

/** Weeks up to 28 November 2026; null is not known. */
function check({ asked, changes }: Given, expected: readonly (number | null)[]) {
  const last = dayNumberOf('2026-11-28')
  const buckets = layOutBuckets('week', 0, last, asked.length)
  const series = Int32Array.from(asked)
  markOutOfStock(
    series,
    buckets,
    changes.map(([date, change]) => ({ day: dayNumberOf(date), change })),
  )
  expect(Array.from(series, pieces => (pieces === -1 ? null : pieces))).toEqual(expected)
}

test('a week without the part on the shelf from first to last day is not known', () =>
  check(
    {
      asked: [1, 1, 0, 0],
      changes: [
        ['2026-11-01', 2],
        ['2026-11-03', -1],
        ['2026-11-10', -1],
        ['2026-11-22', 3],
      ],
    },
    [1, 1, null, 0],
  ))

test('a week in which the part was asked for is known, on the shelf or not', () =>
  check(
    {
      asked: [1, 0, 2],
      changes: [
        ['2026-11-08', 1],
        ['2026-11-09', -1],
      ],
    },
    [1, null, 2],
  ))

test('a part that was never on the shelf is ordered when asked for: its weeks are known', () =>
  check({ asked: [0, 1, 0], changes: [] }, [0, 1, 0]))

test('what has been gone for a quarter of a year was let go, and that nobody takes it is no demand', () => {
  const asked = [1, ...Array.from({ length: 19 }, () => 0)]
  const gone = [null, null, null, null, null, null, null, null, null, null, null, null]
  check(
    {
      asked,
      changes: [
        ['2026-07-13', 1],
        ['2026-07-14', -1],
      ],
    },
    [1, ...gone, 0, 0, 0, 0, 0, 0, 0],
  )
})
