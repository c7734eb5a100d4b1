import { expect, test } from 'vitest'
import { readPastDay } from '../../../renderer/counter/read-past-day.ts'

const now = new Date('2026-11-23T09:00:00Z')

test.each([
  ['2026-11-23', '2026-11-23'],
  ['23.11.2026', '2026-11-23'],
  [' 2024/2/29 ', '2024-02-29'],
])('“%s” is a day', (typed, day) => {
  expect(readPastDay(typed, now)).toEqual({ ok: true, day })
})

test.each([
  ['', /whole day/],
  ['2026', /whole day/],
  ['2026-11', /whole day/],
  ['2026-02-29', /whole day/],
  ['31.04.2026', /whole day/],
  ['yesterday', /whole day/],
  ['2026-11-24', /has not come yet/],
])('“%s” is none that can be shown', (typed, problem) => {
  expect(readPastDay(typed, now)).toEqual({ ok: false, problem: expect.stringMatching(problem) })
})
