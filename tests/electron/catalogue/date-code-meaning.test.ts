import { describe, expect, test } from 'vitest'
import { type Meaning, readMeanings } from '../../../electron/catalogue/date-code-meaning.ts'

const figures: Meaning = { kind: 'figures' }
const letters = (first: string, number: number, skipped = ''): Meaning => ({
  kind: 'letters',
  first,
  number,
  skipped,
})
const list = (numbers: Record<string, number>): Meaning => ({
  kind: 'list',
  numbers: new Map(Object.entries(numbers)),
})

describe('what a date code says of its groups is read as the catalogue writes it', () => {
  const check = (means: string, expected: Record<string, Meaning>) =>
    expect(readMeanings(means)).toEqual(new Map(Object.entries(expected)))
  test.each<[string, Record<string, Meaning>]>([
    ['', {}],
    ['  ', {}],
    ['year=1-digit', { year: figures }],
    ['year=2-digit;week=2-digit', { year: figures, week: figures }],
    [' year = 4-digit ; month = 2-digit ', { year: figures, month: figures }],
    ['year=letter A=2004', { year: letters('A', 2004) }],
    ['year=letter C=2010 skip I', { year: letters('C', 2010, 'I') }],
    [
      'year=letter A=2004 skip I O Q;month=letter A=1',
      { year: letters('A', 2004, 'I O Q'), month: letters('A', 1) },
    ],
    ['A=2010', { year: list({ A: 2010 }) }],
    ['A=2010|b=2011', { year: list({ A: 2010, B: 2011 }) }],
    ['A=2010||B=2011', { year: list({ A: 2010, B: 2011 }) }],
    ['A=2010, B=2011; X9=2012 10=2013', { year: list({ A: 2010, B: 2011, X9: 2012, 10: 2013 }) }],
  ])('%s', check)
})

describe('what cannot be read is not half read', () => {
  const check = (means: string) => expect(readMeanings(means)).toBeUndefined()
  test.each([
    'year',
    'year=',
    '=2-digit',
    'day=2-digit',
    'year=3-digit',
    'year=12-digit',
    'year=2-digits',
    'year=roman',
    'year=letter',
    'year=letter a=2004',
    'year=letter AB=2004',
    'year=letter A=',
    'year=letter A=2004 skip',
    'year=letter A=2004 skip IO',
    'year=letter A=2004 skip I,O',
    'year=my letter A=2004',
    'year=letter A=2004 skip I and more',
    'year=2-digit;',
    'year=2-digit;week=roman',
    'A=2010|B=11',
    'A=2010|B=20111',
    'A=2010|ABC=2011',
    'A=2010|-=2011',
    'A=2010|',
  ])('%s', check)
})
