import { expect, test } from 'vitest'
import {
  bucketOf,
  dayNumberOf,
  isoDateOf,
  layOutBuckets,
} from '../../../../electron/reorder/demand/time-buckets.ts'
import type { Bucket } from '../../../../shared-schemas/stock-levels.ts'

interface Given {
  readonly bucket: Bucket
  readonly first: string
  readonly last: string
  readonly most?: number
}

/** The first days of the buckets. */
function check({ bucket, first, last, most = 100 }: Given, expected: readonly string[]) {
  const { starts } = layOutBuckets(bucket, dayNumberOf(first), dayNumberOf(last), most)
  expect(starts.map(isoDateOf)).toEqual(expected)
}

test('weeks end on the day asked about', () =>
  check({ bucket: 'week', first: '2026-11-05', last: '2026-11-23' }, [
    '2026-11-03',
    '2026-11-10',
    '2026-11-17',
  ]))

test('months that end on the last of a month are those of the calendar', () =>
  check({ bucket: 'month', first: '2025-12-31', last: '2026-02-28' }, [
    '2025-12-01',
    '2026-01-01',
    '2026-02-01',
  ]))

test('months that end within a month end on the same day, or on the last that there is', () =>
  check({ bucket: 'month', first: '2025-12-31', last: '2026-03-30' }, [
    '2025-12-31',
    '2026-01-31',
    '2026-03-01',
  ]))

test('no more buckets are laid out than asked for', () =>
  check({ bucket: 'week', first: '2020-01-01', last: '2026-11-23', most: 2 }, ['2026-11-10', '2026-11-17']))

test('there is no bucket before anything happened', () =>
  check({ bucket: 'week', first: '2026-11-24', last: '2026-11-23' }, []))

test('every day from the first bucket on falls into the bucket that holds it, and no other day into any', () => {
  for (const bucket of ['week', 'month'] as const) {
    const buckets = layOutBuckets(bucket, dayNumberOf('2023-05-17'), dayNumberOf('2026-11-23'), 100)
    const [first = 0] = buckets.starts
    for (let day = first; day <= buckets.last; day++) {
      const at = bucketOf(buckets, day)
      expect(buckets.starts[at]).toBeLessThanOrEqual(day)
      expect(buckets.starts[at + 1] ?? buckets.last + 1).toBeGreaterThan(day)
    }
    expect([bucketOf(buckets, first - 1), bucketOf(buckets, buckets.last + 1)]).toEqual([-1, -1])
  }
})
