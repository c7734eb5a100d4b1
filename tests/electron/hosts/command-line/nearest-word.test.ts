import { expect, test } from 'vitest'
import { findNearestWord } from '../../../../electron/hosts/command-line/nearest-word.ts'

function check(typed: string, expected: string | undefined): void {
  expect(findNearestWord(typed, ['load', 'find', 'fit', 'parts', 'models', 'verify'])).toBe(expected)
}

test.each([
  ['fnd', 'find'],
  ['fits', 'fit'],
  ['verfiy', 'verify'],
  ['model', 'models'],
  ['prats', 'parts'],
])('%s most likely means %s', check)

test('what is like nothing is no word', () => check('quartz', undefined))
