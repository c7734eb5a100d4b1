import { describe, expect, test } from 'vitest'
import { listKnownBrands } from '../../../electron/model-lookup/recognise-brand.ts'

const brands = listKnownBrands(['Ostrel', 'Brennick', 'Hesk & Rowe', 'Lövane'])

const check = (key: string, expected: string | undefined) => expect(brands.almostNamed(key)).toBe(expected)

describe('a brand with one wrong letter is known, and no more than one', () => {
  test.each<[string, string | undefined]>([
    ['OSTREL', 'Ostrel'],
    ['OSTRAL', 'Ostrel'],
    ['OSTREEL', 'Ostrel'],
    ['OSTEL', 'Ostrel'],
    ['BRENICK', 'Brennick'],
    ['LOVANE', 'Lövane'],
    ['HESKROW', 'Hesk & Rowe'],
    ['OSTRAX', undefined],
    ['BREINCKA', undefined],
    ['OSTR', undefined],
    ['OSTREL7', undefined],
    ['AQUALANE', undefined],
  ])('%s', check)
})

test('a brand is known whatever its case and separators', () => {
  expect(brands.named('hesk and rowe')).toBeUndefined()
  expect(brands.named('HESK&ROWE')).toBe('Hesk & Rowe')
  expect(brands.named('lövane')).toBe('Lövane')
})
