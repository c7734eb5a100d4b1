import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  findLoopedReplacements,
  type Replacement,
} from '../../../electron/catalogue/loading/find-supersession-loops.ts'

/** `1>2` is 2 replacing 1, `1=2` either replacing the other; a row after the stroke is newly stated. */
function readRows(written: string): readonly Replacement[] {
  const [stored = '', stated = ''] = written.split('|')
  const read = (row: string, line: number): Replacement => {
    const [old, next] = row.split(/[>=]/).map(Number)
    return { old: old ?? 0, new: next ?? 0, way: row.includes('=') ? 'both' : 'one', line }
  }
  const list = (rows: string) => rows.split(' ').filter(row => row !== '')
  return [...list(stored).map(row => read(row, 0)), ...list(stated).map((row, at) => read(row, at + 1))]
}

describe('replacements that lead back to where they began', () => {
  const check = (written: string, expected: Readonly<Record<number, string>>) => {
    const looped = findLoopedReplacements(readRows(written))
    expect(Object.fromEntries([...looped].map(([{ line }, loop]) => [line, loop.join(' -> ')]))).toEqual(
      expected,
    )
  }
  test.each<[string, string, Readonly<Record<number, string>>]>([
    ['a chain has none', '| 1>2 2>3 3>4', {}],
    ['two that replace each other both ways are no loop', '| 1=2 2=3 3=1', {}],
    ['two chains to one part are none', '| 1>2 3>2 2>4', {}],
    [
      'every new row of a loop is named',
      '| 1>2 2>3 3>1',
      { 1: '1 -> 2 -> 3 -> 1', 2: '1 -> 2 -> 3 -> 1', 3: '1 -> 2 -> 3 -> 1' },
    ],
    ['a row that closes a loop with stored ones is named alone', '1>2 2>3 | 3>1', { 1: '1 -> 2 -> 3 -> 1' }],
    [
      'a part may not be replaced one way by what replaces it both ways',
      '| 1=2 2>1',
      { 1: '2 -> 1 -> 2', 2: '2 -> 1 -> 2' },
    ],
    [
      'a loop may lead over parts that replace each other',
      '1>2 | 2=3 3>1',
      { 1: '1 -> 2 -> 3 -> 1', 2: '1 -> 2 -> 3 -> 1' },
    ],
    [
      'a longer way back is found behind a shorter one',
      '1>2 | 2=1 2=3 3=1',
      { 1: '1 -> 2 -> 1', 2: '1 -> 2 -> 3 -> 1', 3: '1 -> 2 -> 3 -> 1' },
    ],
  ])('%s', (_what, written, expected) => check(written, expected))
})

test('what is left when the named rows are taken out leads back nowhere', () => {
  const row = fc.record({
    old: fc.integer({ min: 1, max: 6 }),
    new: fc.integer({ min: 1, max: 6 }),
    way: fc.constantFrom('one' as const, 'both' as const),
  })
  const rows = fc.array(row, { maxLength: 12 })
  fc.assert(
    fc.property(rows, given => {
      const stated = given
        .filter(({ old, new: next }) => old !== next)
        .map((row, at) => ({ ...row, line: at + 1 }))
      const looped = findLoopedReplacements(stated)
      const left = stated.filter(row => !looped.has(row))
      expect(findLoopedReplacements(left).size).toBe(0)
      for (const { old, new: next, way } of left)
        if (way === 'one') expect(reaches(left, next, old)).toBe(false)
    }),
    { numRuns: 1000 },
  )
})

/** Follows every step for as many rounds as there are parts. */
function reaches(rows: readonly Replacement[], from: number, to: number): boolean {
  const reached = new Set([from])
  for (let round = 0; round < 6; round += 1)
    for (const { old, new: next, way } of rows) {
      if (reached.has(old)) reached.add(next)
      if (way === 'both' && reached.has(next)) reached.add(old)
    }
  return reached.has(to)
}
