import { expect, test } from 'vitest'
import { readMadeDate } from '../../../renderer/counter/read-made-date.ts'

test.each([
  ['2014', '2014'],
  ['2014-06', '2014-06'],
  ['2014-6', '2014-06'],
  ['06/2014', '2014-06'],
  ['6.2014', '2014-06'],
  ['2014 06', '2014-06'],
  ['17.06.2014', '2014-06-17'],
  [' 2014-06-17 ', '2014-06-17'],
])('%s is %s', (typed, date) => {
  expect(readMadeDate(typed)).toBe(date)
})

test.each([
  '',
  '14',
  '13/2014',
  '2014-13',
  '2014-00',
  '2014-06-32',
  '06/14',
  '1/2/3/2014',
  'June 2014',
  '20145',
])('“%s” is no date, and is not guessed at', typed => {
  expect(readMadeDate(typed)).toBeUndefined()
})
