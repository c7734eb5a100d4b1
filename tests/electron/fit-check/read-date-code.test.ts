import { describe, expect, test } from 'vitest'
import { wordDays } from '../../../electron/fit-check/made-dates.ts'
import { type DateCode, readDateCodes } from '../../../electron/fit-check/read-date-code.ts'

const yearWeek: DateCode = {
  pattern: '^(?<year>\\d{2})(?<week>\\d{2})\\d{5}$',
  means: 'year=2-digit;week=2-digit',
}
const oneDigit: DateCode = {
  pattern: '^(?<year>\\d)(?<month>\\d{2})\\d{4}$',
  means: 'year=1-digit;month=2-digit',
}
const letter: DateCode = { pattern: '^(?<year>[A-Z])\\d{4}$', means: 'year=letter A=2004 skip I O' }
const whole: DateCode = { pattern: '^TV(?<year>20\\d{2})', means: 'year=4-digit' }
const unknown: DateCode = { pattern: '^(?<year>\\d{2})', means: 'year=roman' }

describe('a serial is read by the date code of its brand', () => {
  const check = (codes: DateCode[], serial: string, expected: string[]) =>
    expect(readDateCodes(codes, serial).map(wordDays)).toEqual(expected)
  test.each<[DateCode[], string, string[]]>([
    [[yearWeek], '142012345', ['2014-05-12 to 2014-05-18']],
    // Week 1 of 2015 begins in 2014, and 2015 has 53 weeks (calendar of ISO 8601-1; checked by date(1): %G-W%V).
    [[yearWeek], '150112345', ['2014-12-29 to 2015-01-04']],
    [[yearWeek], '155312345', ['2015-12-28 to 2016-01-03']],
    [[yearWeek], '145312345', []],
    [[yearWeek], '140012345', []],
    [[yearWeek], '995212345', ['1999-12-27 to 2000-01-02']],
    [[yearWeek], 'X42012345', []],
    [[oneDigit], '4061234', ['1984-06', '1994-06', '2004-06', '2014-06', '2024-06', '2034-06']],
    [[oneDigit], '4131234', []],
    [[letter], 'A0001', ['2004-01 to 2004-12']],
    [[letter], 'j0001', ['2012-01 to 2012-12']],
    [[letter], 'I0001', []],
    [[whole], 'TV2019', ['2019-01 to 2019-12']],
    [[unknown], '1420', []],
    [[{ ...yearWeek, means: '' }], '142012345', ['2014-05-12 to 2014-05-18']],
    [[{ pattern: '^(?<year>.)', means: 'A=2010|B=2011' }], 'B0001', ['2011-01 to 2011-12']],
    [[{ pattern: '^(?<year>.)', means: 'A=2010|B=2011' }], 'C0001', []],
    [[whole, letter], 'B0001', ['2005-01 to 2005-12']],
    [[], 'B0001', []],
  ])('%j reads %s', check)
})
