import { describe, expect, test } from 'vitest'
import {
  anyDay,
  covers,
  cutDays,
  type DaySpan,
  daysBetween,
  daysInBoth,
  daysOf,
  wordDays,
} from '../../../electron/fit-check/made-dates.ts'

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

describe('a piece has the first and the last day on which nothing changes', () => {
  const day = (text: string) => daysOf(text).first
  const check = (span: DaySpan, ranges: DaySpan[], expected: DaySpan[]) =>
    expect(cutDays(span, ranges)).toEqual(expected)
  const june = daysOf('2014-06')
  test.each<[string, DaySpan, DaySpan[], DaySpan[]]>([
    ['nothing cuts', june, [], [june]],
    ['a range that is the span itself', june, [june], [june]],
    ['a range that touches neither end', june, [daysOf('2014-05'), daysOf('2014-07')], [june]],
    [
      'a range of the last day',
      june,
      [daysOf('2014-06-30')],
      [{ first: june.first, last: june.last - 1 }, daysOf('2014-06-30')],
    ],
    [
      'a range of the first day',
      june,
      [daysOf('2014-06-01')],
      [daysOf('2014-06-01'), { first: june.first + 1, last: june.last }],
    ],
    [
      'ranges given out of order, one twice',
      june,
      [daysBetween('2014-06-20', null), daysBetween('2014-06-10', null), daysBetween('2014-06-20', null)],
      [
        { first: june.first, last: day('2014-06-09') },
        { first: day('2014-06-10'), last: day('2014-06-19') },
        { first: day('2014-06-20'), last: june.last },
      ],
    ],
    ['an endless range', june, [anyDay], [june]],
  ])('%s', (_title, span, ranges, expected) => check(span, ranges, expected))
})

describe('one span covers another where neither end sticks out', () => {
  const check = (outer: string, inner: string, expected: boolean) =>
    expect(covers(daysOf(outer), daysOf(inner))).toBe(expected)
  test.each([
    ['2014', '2014', true],
    ['2014', '2014-01', true],
    ['2014', '2014-12', true],
    ['2014-06', '2014', false],
    ['2014', '2013', false],
    ['2014', '2015', false],
  ])('%s and %s: %s', check)
  test('half within is not covered', () => {
    const half = { first: daysOf('2013-12').first, last: daysOf('2014-01').last }
    expect([covers(daysOf('2014'), half), covers(daysOf('2013'), half)]).toEqual([false, false])
  })
})

describe('days in both may be one', () => {
  test.each([
    ['2014-06', '2014-06-30', '2014-06-30'],
    ['2014-06-30', '2014-06', '2014-06-30'],
  ])('%s and %s', (one, other, both) => expect(daysInBoth(daysOf(one), daysOf(other))).toEqual(daysOf(both)))
})

describe('a span in words loses its days only where the month is whole', () => {
  const check = (from: string | null, to: string | null, words: string) =>
    expect(wordDays(daysBetween(from, to))).toBe(words)
  test.each([
    [null, null, 'any date'],
    [null, '2014-05', 'to 2014-05'],
    [null, '2014-05-12', 'to 2014-05-12'],
    ['2014-05', null, '2014-05 on'],
    ['2014-05-12', null, '2014-05-12 on'],
    ['2014-05-02', '2014-05-31', '2014-05-02 to 2014-05'],
    ['2014-05-01', '2014-05-30', '2014-05 to 2014-05-30'],
    ['2014-05', '2014-05', '2014-05'],
  ])('%s to %s: %s', check)
})

test('a day is counted from 1970-01-01', () => {
  expect(['1970-01-01', '1970-02-01', '1969-12-31'].map(day => daysOf(day).first)).toEqual([0, 31, -1])
})
