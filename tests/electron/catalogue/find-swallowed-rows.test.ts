import { describe, expect, test } from 'vitest'
import { findSwallowedRows } from '../../../electron/catalogue/loading/find-swallowed-rows.ts'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

describe('a cell that holds rows of its own', () => {
  const check = (cells: readonly string[], expected: ReturnType<typeof findSwallowedRows>) => {
    expect(findSwallowedRows(cells)).toEqual(expected)
  }
  test.each<[string, readonly string[], ReturnType<typeof findSwallowedRows>]>([
    ['two rows that ran together', ['a', 'b,c\nd,e', 'f'], { at: 1, lines: 2 }],
    ['three rows that ran together', ['a', 'b,c\n1,2,3\nd,e', 'f'], { at: 1, lines: 3 }],
    ['a description on two lines', ['a', 'Pump, drain\nwith seal', 'f', ''], undefined],
    ['a description with many commas on one line', ['a', 'Pump, drain, 30 W, with seal', 'f'], undefined],
    ['a file of one column', ['two\nlines'], undefined],
  ])('%s', (_what, cells, expected) => check(cells, expected))
})

test('two quotes in the wrong places lose no row without a word', async () => {
  const parts = smallCatalogue['parts.csv'].split('\n')
  const rows = [
    'N1,drain-pump,,genuine,"Pump,,',
    'N2,drain-pump,,genuine,Pump,,',
    'N3,drain-pump,,genuine,Pump",,',
    'N4,drain-pump,,genuine,Pump,,',
  ]
  const { rejected, files } = await openTestCatalogue().load({
    ...smallCatalogue,
    'parts.csv': [...parts.slice(0, -1), ...rows, ''].join('\n'),
  })
  expect(rejected).toMatchObject([
    {
      file: 'parts.csv',
      line: parts.length,
      column: 'description',
      reason: expect.stringMatching(/^holds 3 lines that look like rows of their own/),
    },
  ])
  expect(files.find(({ file }) => file === 'parts.csv')).toMatchObject({ added: 6, rejected: 1 })
})
