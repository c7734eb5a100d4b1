import { describe, expect, test } from 'vitest'
import { cutDays, daysBetween, daysInBoth, daysOf, wordDays } from '../../../electron/fit-check/made-dates.ts'

describe('a date of making may be as coarse as its year', () => {
  const check = (text: string, days: number, words: string) => {
    const span = daysOf(text)
    expect(span.last - span.first + 1).toBe(days)
    expect(wordDays(span)).toBe(words)
  }
  test.each([
    ['2014', 365, '2014-01 to 2014-12'],
    ['2012', 366, '2012-01 to 2012-12'],
    ['2014-06', 30, '2014-06'],
    ['2012-02', 29, '2012-02'],
    ['2014-12', 31, '2014-12'],
    ['2014-06-17', 1, '2014-06-17'],
  ])('%s is %i days', check)
})

describe('a range is inclusive at both ends and open where an end is missing', () => {
  const check = (from: string | null, to: string | null, inside: string[], outside: string[]) => {
    const range = daysBetween(from, to)
    for (const date of inside) expect(daysInBoth(range, daysOf(date)), date).toEqual(daysOf(date))
    for (const date of outside) expect(daysInBoth(range, daysOf(date)), date).toBeUndefined()
  }
  test.each([
    ['2013-02', '2014-05', ['2013-02-01', '2014-05-31'], ['2013-01-31', '2014-06-01']],
    [null, '2014-05', ['1999-01-01', '2014-05'], ['2014-06']],
    ['2014-06', null, ['2014-06-01', '2030'], ['2014-05-31']],
    [null, null, ['1999', '2030'], []],
  ])('%s to %s', check)
})

test('a span is cut wherever a range begins or ends, and nowhere else', () => {
  const pieces = cutDays(daysOf('2014'), [
    daysBetween(null, '2014-05'),
    daysBetween('2014-06', null),
    daysOf('2014-09'),
  ])
  expect(pieces.map(wordDays)).toEqual([
    '2014-01 to 2014-05',
    '2014-06 to 2014-08',
    '2014-09',
    '2014-10 to 2014-12',
  ])
})

test('an open span is cut into pieces whose ends stay open', () => {
  const pieces = cutDays(daysBetween(null, null), [daysBetween('2014-06', null)])
  expect(pieces.map(wordDays)).toEqual(['to 2014-05', '2014-06 on'])
})
