import { describe, expect, test } from 'vitest'
import { findFamilies } from '../../../electron/fit-check/find-families.ts'

describe('words find the families they may mean, and a second word narrows', () => {
  const families = [
    { name: 'Drain pump', function: 'drain', partWords: ['00480121'] },
    { name: 'Door seal, washer', function: 'door and seal', partWords: [] },
    { name: 'Door lock', function: 'door and seal', partWords: [] },
    { name: 'Inlet valve, single', function: 'water inlet', partWords: [] },
  ]
  const check = (words: string, expected: string[]) =>
    expect(findFamilies(families, words).map(({ name }) => name)).toEqual(expected)
  test.each([
    ['drain', ['Drain pump']],
    ['door', ['Door seal, washer', 'Door lock']],
    ['door lock', ['Door lock']],
    ['LOCK door', ['Door lock']],
    ['dor lock', ['Door lock']],
    ['inlet', ['Inlet valve, single']],
    ['00480121', ['Drain pump']],
    ['magnetron', []],
  ])('%s', check)
})
