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
const lateLetter: DateCode = { pattern: '^(?<year>[A-Z])\\d{4}$', means: 'year=letter C=2010' }
const anyTwo: DateCode = { pattern: '^(?<year>..)$', means: 'year=2-digit' }

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
    // Two figures from 70 on are of the last century (weeks checked by date(1): %G-W%V).
    [[yearWeek], '700112345', ['1969-12-29 to 1970-01-04']],
    [[yearWeek], '690112345', ['2068-12-31 to 2069-01-06']],
    [[oneDigit], '4011234', ['1984-01', '1994-01', '2004-01', '2014-01', '2024-01', '2034-01']],
    [[oneDigit], '4121234', ['1984-12', '1994-12', '2004-12', '2014-12', '2024-12', '2034-12']],
    [[oneDigit], '4001234', []],
    [[lateLetter], 'C0001', ['2010-01 to 2010-12']],
    [[lateLetter], 'E0001', ['2012-01 to 2012-12']],
    [[lateLetter], 'B0001', []],
    [[anyTwo], 'A4', []],
    [[anyTwo], '4A', []],
    [[{ pattern: '^(?<year>\\d{3})$', means: '' }], '214', []],
    [[{ pattern: '^(?<month>\\d{2})$', means: '' }], '06', []],
    [[{ pattern: '^(?<year>\\d{2})\\p{Lu}$', means: '' }], '14Ä', ['2014-01 to 2014-12']],
    [[whole], ' tv2019 ', ['2019-01 to 2019-12']],
    [
      [
        { pattern: '^(?<year>.)', means: 'A=2014' },
        { pattern: '^(?<year>.)', means: 'A=2010' },
      ],
      'A0001',
      ['2010-01 to 2010-12', '2014-01 to 2014-12'],
    ],
  ])('%j reads %s', check)
})
