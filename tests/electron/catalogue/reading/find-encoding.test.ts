import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { accountForBytes } from '../../../../electron/catalogue/reading/byte-account.ts'
import { findEncoding } from '../../../../electron/catalogue/reading/find-encoding.ts'
import type { EncodingFound } from '../../../../shared-schemas/supplier-layouts.ts'
import { withCatalogueFolder } from '../../../builders/catalogue-folder.ts'

function find(bytes: Uint8Array): Promise<EncodingFound> {
  return withCatalogueFolder({ list: bytes }, async folder =>
    findEncoding(await accountForBytes(path.join(folder, 'list'))),
  )
}

const german = 'Artikel;Bezeichnung\r\n4711-A;Heizkörper für Türe, 16 µF ±5 %\r\n'
const plain = 'code,description\r\nELM-2000,Heating element 2000 W\r\n'
const utf8 = Buffer.from(german)
const wide = (text: string) => Buffer.from(text, 'utf16le')
const wideBigEndian = (text: string) => wide(text).swap16()

describe('what the bytes say', () => {
  const cases: readonly (readonly [string, Uint8Array, Partial<EncodingFound>])[] = [
    ['a mark of UTF-8', Buffer.from(`\u{feff}${german}`), { encoding: 'utf-8', certainty: 'certain' }],
    ['a mark of UTF-16', wide(`\u{feff}${german}`), { encoding: 'utf-16le', certainty: 'certain' }],
    [
      'a mark of UTF-16, big end first',
      wideBigEndian(`\u{feff}${german}`),
      { encoding: 'utf-16be', certainty: 'certain' },
    ],
    ['UTF-16 without a mark', wide(german), { encoding: 'utf-16le', certainty: 'certain' }],
    [
      'UTF-16 without a mark, big end first',
      wideBigEndian(german),
      { encoding: 'utf-16be', certainty: 'certain' },
    ],
    ['plain letters, which all read alike', Buffer.from(plain), { encoding: 'utf-8', certainty: 'certain' }],
    [
      'UTF-8 without a mark, which other encodings can read too',
      utf8,
      { encoding: 'utf-8', certainty: 'likely' },
    ],
    [
      'one byte a letter, which says nothing of itself',
      Buffer.from(german, 'latin1'),
      { encoding: 'windows-1252', certainty: 'open' },
    ],
    ['nothing at all', Buffer.alloc(0), { encoding: 'utf-8', certainty: 'certain' }],
  ]
  test.each(cases)('%s', async (_title, bytes, expected) => expect(await find(bytes)).toMatchObject(expected))
})

test('an encoding that has no letter for one of the bytes is no option', async () => {
  // 0x81 stands for nothing in Windows-1252 (Encoding Standard, index windows-1252: it maps to the control U+0081).
  const options = (await find(Buffer.from('a\u0081b;\u00fc', 'latin1'))).options.map(
    ({ encoding }) => encoding,
  )
  expect(options).not.toContain('windows-1252')
  expect(options).toContain('windows-1251')
  expect(options).not.toContain('utf-8')
})

test('a letter far down in a long file is found', async () => {
  const long = `${plain.repeat(20_000)}4711;Tür\r\n`
  expect(await find(Buffer.from(long, 'latin1'))).toMatchObject({ certainty: 'open' })
  expect((await find(Buffer.from(long, 'latin1'))).options[0]?.samples).toEqual(['4711;Tür'])
})
