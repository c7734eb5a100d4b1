import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { explainedSurvivors } from './explained-survivors.ts'
import { explain, listSurvivors, scoreFiles, scorePercent, squeeze } from './read-report.ts'

test('what is explained still stands in the program', () => {
  const gone = explainedSurvivors.filter(({ file, text, original }) => {
    const source = readFileSync(path.join(import.meta.dirname, '../..', file), 'utf8')
    return !source.split('\n').map(squeeze).includes(text) || !squeeze(source).includes(original)
  })
  expect(gone).toEqual([])
})

test('a survivor is found by its text, and counts against the score whether or not it is explained', () => {
  const at = (line: number, column: number) => ({ line, column })
  const report = {
    files: {
      'a.ts': {
        source: 'const a =\n  one  + two\nconst b = 3\n',
        mutants: [
          { status: 'Killed' as const, location: { start: at(3, 11), end: at(3, 12) } },
          { status: 'Timeout' as const, location: { start: at(3, 11), end: at(3, 12) } },
          { status: 'NoCoverage' as const, location: { start: at(3, 11), end: at(3, 12) }, replacement: '4' },
          { status: 'Ignored' as const, location: { start: at(3, 11), end: at(3, 12) } },
          {
            status: 'Survived' as const,
            location: { start: at(1, 7), end: at(2, 13) },
            replacement: 'a = one  - two',
          },
        ],
      },
    },
  }
  const survivors = listSurvivors(report)
  expect(survivors).toEqual([
    { file: 'a.ts', line: 3, text: 'const b = 3', original: '3', becomes: '4' },
    { file: 'a.ts', line: 1, text: 'const a =', original: 'a = one + two', becomes: 'a = one - two' },
  ])
  expect(scorePercent(scoreFiles(report))).toBe(50)
  const list = [
    { file: 'a.ts', text: 'const b = 3', original: '3', becomes: ['4'], why: 'b is read nowhere' },
  ]
  expect(survivors.map(survivor => explain(survivor, list))).toEqual(['b is read nowhere', undefined])
})
