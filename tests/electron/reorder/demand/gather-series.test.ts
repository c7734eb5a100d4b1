import { expect, test } from 'vitest'
import type { UsedOnDay } from '../../../../electron/reorder/demand/demand-queries.ts'
import { gatherSeries } from '../../../../electron/reorder/demand/gather-series.ts'
import { dayNumberOf, layOutBuckets } from '../../../../electron/reorder/demand/time-buckets.ts'

type Row = readonly [date: string, location: number, part: number, quantity: number]

interface Given {
  readonly usage?: readonly Row[]
  readonly issued?: readonly Row[]
  readonly countsFor?: Readonly<Record<number, number>>
}

/** Four weeks, the last of which ends on 28 November 2026; by part, what was asked for in each. */
function check({ usage = [], issued = [], countsFor = {} }: Given, expected: Record<number, number[]>) {
  const buckets = layOutBuckets('week', dayNumberOf('2026-11-01'), dayNumberOf('2026-11-28'), 4)
  const days = (rows: readonly Row[]) =>
    rows.map(([date, location, part, quantity]): UsedOnDay => [part, location, dayNumberOf(date), quantity])
  const found = gatherSeries(buckets, {
    usage: days(usage),
    issued: days(issued),
    countsFor: part => countsFor[part] ?? part,
  })
  expect(Object.fromEntries([...found].map(([part, series]) => [part, [...series]]))).toEqual(expected)
}

test('what was used in a week adds up, wherever it was', () =>
  check(
    {
      usage: [
        ['2026-11-01', 1, 7, 2],
        ['2026-11-07', 2, 7, 1],
        ['2026-11-22', 1, 7, 4],
      ],
    },
    { 7: [3, 0, 0, 4] },
  ))

test('what came back is taken off what was asked for before it, and never goes below nothing', () => {
  check(
    {
      usage: [
        ['2026-11-02', 1, 7, 2],
        ['2026-11-09', 1, 7, 1],
        ['2026-11-16', 1, 7, -2],
      ],
    },
    { 7: [1, 0, 0, 0] },
  )
  check({ usage: [['2026-11-16', 1, 7, -2]] }, { 7: [0, 0, 0, 0] })
})

test('where usage and ledger tell of the same weeks of a place, nothing is counted twice and nothing is lost', () =>
  check(
    {
      usage: [
        ['2026-11-02', 1, 7, 5],
        ['2026-11-17', 1, 7, 2],
        ['2026-11-24', 1, 7, 3],
      ],
      issued: [
        ['2026-11-16', 1, 7, 2],
        ['2026-11-23', 1, 7, 1],
      ],
    },
    { 7: [5, 0, 2, 3] },
  ))

test('usage of the days before a place’s ledger begins is told by nobody else, even within one week', () =>
  check(
    {
      usage: [['2026-11-15', 1, 7, 3]],
      issued: [['2026-11-18', 1, 7, 2]],
    },
    { 7: [0, 0, 5, 0] },
  ))

test('the ledger of one place does not silence the usage of another', () =>
  check(
    {
      usage: [['2026-11-24', 2, 7, 3]],
      issued: [['2026-11-23', 1, 7, 1]],
    },
    { 7: [0, 0, 0, 4] },
  ))

test('a replaced number’s history counts for the number that stands for it today', () =>
  check(
    {
      usage: [
        ['2026-11-02', 1, 6, 5],
        ['2026-11-09', 1, 7, 2],
      ],
      countsFor: { 6: 7 },
    },
    { 7: [5, 2, 0, 0] },
  ))
