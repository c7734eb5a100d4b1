import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { hasWildcard, matchModelPattern } from '../../../electron/catalogue/loading/match-model-pattern.ts'

const keys = ['QT1001', 'QT1002', 'QT10012', 'QT2001', 'XQT1001', 'Q']
const models = new Map(keys.map((key, at) => [key, at]))

describe('a listed number with wildcards', () => {
  const check = (listed: string, expected: readonly string[]) => {
    expect(hasWildcard(listed)).toBe(true)
    expect(matchModelPattern(listed, models).map(at => keys[at])).toEqual(expected)
  }
  test.each<[string, string, readonly string[]]>([
    ['a * at the end stands for any ending, none included', 'QT1001*', ['QT1001', 'QT10012']],
    ['a ? stands for exactly one character', 'QT100?', ['QT1001', 'QT1002']],
    ['a * stands anywhere', '*QT1001', ['QT1001', 'XQT1001']],
    ['several stars are several gaps', 'Q*1*2', ['QT1002', 'QT10012']],
    ['stars beside each other are one', 'QT2***1', ['QT2001']],
    ['separators and small letters count as little as in any number', 'qt-100.?', ['QT1001', 'QT1002']],
    ['a * alone stands for every model of the brand', '*', keys],
    ['a ? in the middle is not left out', 'QT1?001', []],
  ])('%s: %s', (_what, listed, expected) => check(listed, expected))
})

test('it means what its few lines of definition say, whatever the characters', () => {
  const text = fc.string({ unit: fc.constantFrom('A', '1'), maxLength: 9 })
  const pattern = fc.string({ unit: fc.constantFrom('A', '1', '*', '?'), maxLength: 7 })
  fc.assert(
    fc.property(pattern, text, (listed, key) => {
      expect(matchModelPattern(listed, new Map([[key, 1]])).length === 1).toBe(means(listed, key))
    }),
    { numRuns: 2000 },
  )
})

test('a pattern full of stars is decided at once', () => {
  const started = performance.now()
  expect(matchModelPattern(`${'*A'.repeat(60)}*B`, new Map([['A'.repeat(200), 1]]))).toEqual([])
  expect(performance.now() - started).toBeLessThan(500)
})

/** The definition, too slow for anything but short texts. */
function means(listed: string, key: string): boolean {
  if (listed === '') return key === ''
  if (listed[0] === '*') return means(listed.slice(1), key) || (key !== '' && means(listed, key.slice(1)))
  return key !== '' && (listed[0] === '?' || listed[0] === key[0]) && means(listed.slice(1), key.slice(1))
}
