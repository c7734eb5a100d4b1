import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { convertDate, guessDate } from '../../../../electron/catalogue/layouts/convert-date.ts'
import { convertNumber } from '../../../../electron/catalogue/layouts/convert-number.ts'
import { guessDateOrder, guessSigns } from '../../../../electron/catalogue/layouts/guess-signs.ts'

type Sign = '.' | ','
const textOf = (converted: ReturnType<typeof convertNumber>) => (converted.ok ? converted.text : undefined)

describe('a figure', () => {
  const cases: readonly (readonly [string, Sign, boolean, string | undefined])[] = [
    ['12.50', '.', false, '12.50'],
    ['12,50', ',', false, '12.50'],
    ['7', ',', false, '7'],
    ['0012', '.', false, '0012'],
    ['220-240', ',', false, '220-240'],
    ['0,5 / 1,5', ',', false, '0.5/1.5'],
    ['1.234,50', ',', true, '1234.50'],
    ['1 234,50', ',', true, '1234.50'],
    ['1’234.50', '.', true, '1234.50'],
    ['1.234', ',', true, '1234'],
    // The other sign is never taken for the decimal one.
    ['12.50', ',', false, undefined],
    ['12,50', '.', false, undefined],
    ['1.234', ',', false, undefined],
    ['12,34', '.', true, undefined],
    ['1,23,456.00', '.', true, undefined],
    ['£12.50', '.', false, undefined],
    ['1O', '.', false, undefined],
    ['', '.', false, undefined],
  ]
  test.each(cases)('%j with %j, thousands parted: %j', (cell, decimalSign, thousands, expected) =>
    expect(textOf(convertNumber(cell, { decimalSign, thousands }))).toBe(expected),
  )

  test('comes back from either sign as it was', () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(9_999), fc.constantFrom<Sign>('.', ','), (whole, part, decimalSign) => {
        const cell = `${whole}${decimalSign}${part}`
        expect(textOf(convertNumber(cell, { decimalSign, thousands: false }))).toBe(`${whole}.${part}`)
      }),
    )
  })
})

describe('a date', () => {
  const cases: readonly (readonly [string, 'ymd' | 'dmy' | 'mdy', string | undefined])[] = [
    ['17.06.2014', 'dmy', '2014-06-17'],
    ['6/17/2014', 'mdy', '2014-06-17'],
    ['2014/6/17', 'ymd', '2014-06-17'],
    ['2014-06-17', 'dmy', '2014-06-17'],
    ['17.06.2014 00:00:00', 'dmy', '2014-06-17'],
    ['2014-06-17T08:30', 'mdy', '2014-06-17'],
    ['20140617', 'dmy', '2014-06-17'],
    ['201406', 'dmy', '2014-06'],
    ['06/2014', 'dmy', '2014-06'],
    ['6.2014', 'mdy', '2014-06'],
    ['2014/6', 'ymd', '2014-06'],
    ['2014', 'dmy', '2014'],
    ['06/17/2014', 'dmy', undefined],
    ['31.02.2014', 'dmy', undefined],
    ['17.06.14', 'dmy', undefined],
    ['17.06/2014', 'dmy', undefined],
    ['06/07/2014', 'ymd', undefined],
    ['June 2014', 'dmy', undefined],
    ['0', 'dmy', undefined],
  ]
  test.each(cases)('%s in the order %s', (cell, order, expected) =>
    expect(textOf(convertDate(cell, order))).toBe(expected),
  )

  test.each([
    ['2014/6', '2014-06'],
    ['17/06/2014', '2014-06-17'],
    ['06/17/2014', '2014-06-17'],
    ['06/06/2014', '2014-06-06'],
    ['06/07/2014', undefined],
  ])('%s can mean only %s, whatever its order', (cell, expected) => expect(guessDate(cell)).toBe(expected))
})

describe('what the cells of a column tell', () => {
  test.each<[string[], ReturnType<typeof guessSigns>]>([
    [['18,40', '7'], { decimalSign: ',', thousands: false }],
    [['18.40'], { decimalSign: '.', thousands: false }],
    [['1.234,50', '7,00'], { decimalSign: ',', thousands: true }],
    // Points that may part thousands tell nothing.
    [['1.234', '2.500'], { decimalSign: null, thousands: false }],
    [['7', '12'], { decimalSign: null, thousands: false }],
    [['1,5', '1.5'], { decimalSign: null, thousands: false }],
  ])('%j', (samples, expected) => expect(guessSigns(samples)).toEqual(expected))

  test.each<[string[], ReturnType<typeof guessDateOrder>]>([
    [['17.06.2014', '01.02.2014'], 'dmy'],
    [['06/17/2014', '01/02/2014'], 'mdy'],
    [['2014-06', '2014'], 'ymd'],
    [['06/2014'], 'ymd'],
    [['01/02/2014'], null],
    [['17.06.2014', '06/17/2014'], null],
    [[], null],
  ])('%j', (samples, expected) => expect(guessDateOrder(samples)).toBe(expected))
})
