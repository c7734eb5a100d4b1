import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { readCsvRows } from '../../../../electron/catalogue/reading/read-csv-rows.ts'
import type { Encoding, Separator } from '../../../../shared-schemas/supplier-layouts.ts'
import { withCatalogueFolder } from '../../../builders/catalogue-folder.ts'
import { problemOf } from '../../../builders/open-test-catalogue.ts'

function readAll(bytes: Uint8Array, reading: { encoding: Encoding; separator: Separator }) {
  return withCatalogueFolder({ list: bytes }, async folder => {
    const rows = []
    for await (const read of readCsvRows(path.join(folder, 'list'), reading)) rows.push(...read.rows)
    return rows
  })
}

/** Letters of one, two, three and four bytes in UTF-8, one of two units in UTF-16. */
const letters = 'aµ€𝄞'

/** Files are read 96 KiB at a time: with every shift, some letter lies across the border between two pieces. */
describe('no letter is split where two pieces of a file meet', () => {
  const encode: Readonly<Record<string, (text: string) => Buffer>> = {
    'utf-8': text => Buffer.from(text),
    'utf-16le': text => Buffer.from(text, 'utf16le'),
    'utf-16be': text => Buffer.from(text, 'utf16le').swap16(),
  }
  const cases = Object.keys(encode).flatMap(encoding =>
    ['\n', '\r\n', '\r'].map(end => [encoding as Encoding, end] as const),
  )
  test.each(cases)('%s, lines ended by %j', async (encoding, end) => {
    for (let shift = 0; shift < 12; shift += 1) {
      const row = `P;"${letters.repeat(8)}"`
      const text = `${'x'.repeat(shift)};y${end}${`${row}${end}`.repeat(3_000)}`
      const rows = await readAll(encode[encoding]?.(text) ?? Buffer.alloc(0), { encoding, separator: ';' })
      expect(rows).toHaveLength(3_001)
      expect(rows.slice(1).every(({ cells }) => cells[1] === letters.repeat(8))).toBe(true)
      expect(rows.at(-1)?.line).toBe(3_001)
    }
  })
})

test('letters of two bytes, of which the second may be a plain letter or a separator, stay whole', async () => {
  // Shift_JIS (JIS X 0208, as in the Encoding Standard): 0x83 0x7C is ポ, and 0x7C alone would be a bar.
  const row = Buffer.from([0x41, 0x7c, 0x83, 0x7c, 0x0a])
  const rows = await readAll(Buffer.concat(Array.from({ length: 40_000 }, () => row)), {
    encoding: 'shift_jis',
    separator: '|',
  })
  expect(rows).toHaveLength(40_000)
  expect(rows.every(({ cells }) => cells[1] === 'ポ')).toBe(true)
})

test('each of the places of Windows-1252 that the euro sign and the curly quotes took is read as it is printed', async () => {
  // Unicode's own table for the code page, MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT, from memory.
  const bytes = Buffer.from([0x80, 0x85, 0x91, 0x92, 0x93, 0x94, 0x96, 0x97, 0x99, 0xb5, 0xdf])
  const [row] = await readAll(bytes, { encoding: 'windows-1252', separator: ';' })
  expect(row?.cells).toEqual(['€…‘’“”–—™µß'])
})

describe('bytes that are not of the encoding are refused by their line', () => {
  const cases: readonly (readonly [string, Buffer, Encoding, RegExp])[] = [
    ['half a letter', Buffer.from([0x61, 0x0a, 0xc3, 0x0a]), 'utf-8', /line 2 is not UTF-8/],
    ['half a unit', Buffer.from([0x61, 0, 0x0a, 0, 0x62]), 'utf-16le', /line 2 is not UTF-16le/],
    [
      'half a pair',
      Buffer.from([0x61, 0, 0x0a, 0, 0x34, 0xd8, 0x0a, 0]),
      'utf-16le',
      /line 2 is not UTF-16le/,
    ],
    [
      'a byte without a letter',
      Buffer.from([0x61, 0x0d, 0x0a, 0x81]),
      'windows-1252',
      /line 2 is not Windows-1252/,
    ],
  ]
  test.each(cases)('%s', async (_title, bytes, encoding, why) => {
    expect(await problemOf(readAll(bytes, { encoding, separator: ';' }))).toMatchObject({
      code: 'file-unreadable',
      why: expect.stringMatching(why),
    })
  })
})

describe('a first line sep=…', () => {
  test.each([';', ',', '\t', '|'])('names the separator %j, and is no row', async separator => {
    const text = `sep=${separator}\r\na${separator}b\r\n1${separator}2\r\n`
    const rows = await readAll(Buffer.from(text), {
      encoding: 'utf-8',
      separator: separator === ',' ? ';' : ',',
    })
    expect(rows.map(({ line, cells }) => [line, ...cells])).toEqual([
      [2, 'a', 'b'],
      [3, '1', '2'],
    ])
  })

  test('that names no separator we know is refused', async () => {
    const text = Buffer.from('sep=^\na^b\n')
    expect(await problemOf(readAll(text, { encoding: 'utf-8', separator: ',' }))).toMatchObject({
      why: expect.stringMatching(/names “\^” as separator/),
    })
  })
})
