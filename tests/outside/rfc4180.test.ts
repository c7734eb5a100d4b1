import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { readCsvRows } from '../../electron/catalogue/reading/read-csv-rows.ts'
import { withCatalogueFolder } from '../builders/catalogue-folder.ts'

/**
 * The examples of RFC 4180 (Y. Shafranovich, October 2005), section 2, in its own order and with its own text. `CRLF`
 * stands there for the line break that is written here as \r\n.
 */
const examples: readonly (readonly [rule: string, text: string, rows: readonly (readonly string[])[]])[] = [
  ['1: a record a line', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', abcAnd('zzz', 'yyy', 'xxx')],
  ['2: the last line may end without a break', 'aaa,bbb,ccc\r\nzzz,yyy,xxx', abcAnd('zzz', 'yyy', 'xxx')],
  [
    '3: a header of names may come first',
    'field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    [['field_name', 'field_name', 'field_name'], ...abcAnd('zzz', 'yyy', 'xxx')],
  ],
  ['4: no comma after the last field', 'aaa,bbb,ccc', [['aaa', 'bbb', 'ccc']]],
  ['5: a field may stand in quotes or not', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', abcAnd('zzz', 'yyy', 'xxx')],
  [
    '6: a line break within quotes is part of the field',
    '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
    [
      // A line break inside a cell comes out as LF: a name reads the same whichever system wrote the file.
      ['aaa', 'b\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  ['7: a quote within quotes is written twice', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
]

function abcAnd(...second: readonly string[]): readonly (readonly string[])[] {
  return [['aaa', 'bbb', 'ccc'], second]
}

describe('RFC 4180, section 2', () => {
  const check = async (text: string, expected: readonly (readonly string[])[]) => {
    const rows = await readRows(text)
    expect(rows.map(row => row.cells)).toEqual(expected)
    expect(rows.map(row => row.fault)).toEqual(expected.map(() => undefined))
  }
  test.each(examples)('rule %s', (_rule, text, rows) => check(text, rows))
})

test('rule 4: spaces belong to the field', async () => {
  const rows = await readRows('aaa, bbb ,ccc')
  expect(rows[0]?.cells).toEqual(['aaa', ' bbb ', 'ccc'])
})

test('the line of a record is where it begins in the file, breaks within fields counted', async () => {
  const rows = await readRows('a,b\r\n"one\r\ntwo","three\r\nfour"\r\nlast,row\r\n')
  expect(rows.map(row => row.line)).toEqual([1, 2, 5])
})

function readRows(text: string) {
  return withCatalogueFolder({ 'models.csv': text }, async folder => {
    const rows = []
    for await (const read of readCsvRows(path.join(folder, 'models.csv'))) rows.push(...read.rows)
    return rows
  })
}
