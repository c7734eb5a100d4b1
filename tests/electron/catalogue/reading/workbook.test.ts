import path from 'node:path'
import type { CellObject } from '@e965/xlsx'
import { describe, expect, test } from 'vitest'
import { examineFile } from '../../../../electron/catalogue/reading/examine-file.ts'
import { readFirstRows } from '../../../../electron/catalogue/reading/first-rows.ts'
import { settleReading } from '../../../../electron/catalogue/reading/settle-reading.ts'
import { orRefuse } from '../../../../electron/requests/refusal.ts'
import { withCatalogueFolder } from '../../../builders/catalogue-folder.ts'
import { problemOf } from '../../../builders/open-test-catalogue.ts'
import { figure, makeWorkbook } from './make-workbook.ts'

function read(bytes: Uint8Array, sheet: string | null = null) {
  return withCatalogueFolder({ 'list.xlsx': bytes }, async folder => {
    const examined = await examineFile(path.join(folder, 'list.xlsx'), { encoding: null })
    const asked = { encoding: null, separator: null, sheet }
    return readFirstRows(examined, orRefuse(settleReading(examined, asked, { insisted: undefined })), 1_000)
  })
}

/** The days are counted from 1899-12-30, in workbooks of the other kind from 1904-01-01 (ECMA-376 part 1, 18.17.4.1). */
const dayNumber = (date: string, from: string) => (Date.parse(date) - Date.parse(from)) / 86_400_000
const day = dayNumber('2014-06-17', '1899-12-30')

describe('a cell reads', () => {
  const cases: readonly (readonly [string, CellObject | string, string])[] = [
    ['as its text, zeros before it and all', '00480121', '00480121'],
    ['as its text where that looks like a number', '1E5', '1E5'],
    ['as its text where that looks like a formula', '=1+1', '=1+1'],
    ['as the sheet shows it: zeros by its format', figure(480121, '00000000'), '00480121'],
    ['as the sheet shows it: rounded', figure(12.499, '0.00'), '12.50'],
    ['as a figure that no separator can be mistaken in', figure(1234.5, '#,##0.00'), '1234.50'],
    ['with all the digits of a whole number', figure(4006381333931, 'General'), '4006381333931'],
    ['as a fraction of no format', figure(0.1, 'General'), '0.1'],
    ['as a day', figure(day, 'dd.mm.yyyy'), '2014-06-17'],
    ['as a day in the format that differs from country to country', figure(day, 'm/d/yy'), '2014-06-17'],
    ['as a month where no day is shown', figure(day, 'mmm yyyy'), '2014-06'],
    ['as a year where no more is shown', figure(day, 'yyyy'), '2014'],
    ['as the result of its formula', { t: 'n', v: 5, f: 'A1+2' }, '5'],
    ['as the text that its formula gives', { t: 's', v: 'PX 7', f: '"PX "&7' }, 'PX 7'],
    ['as yes', { t: 'b', v: true }, 'yes'],
    ['as the error that its formula gives', { t: 'e', v: 0x2a, w: '#N/A' }, '#N/A'],
  ]
  test.each(cases)('%s', async (_title, cell, expected) => {
    const [, row] = await read(makeWorkbook({ List: { cells: [['a'], [cell]] } }))
    expect(row?.cells).toEqual([expected])
  })

  test('as a day, in a workbook that counts from 1904', async () => {
    const cell = figure(dayNumber('2014-06-17', '1904-01-01'), 'yyyy-mm-dd')
    const [row] = await read(makeWorkbook({ List: { cells: [[cell]] } }, { from1904: true }))
    expect(row?.cells).toEqual(['2014-06-17'])
  })
})

test('rows have their numbers in the sheet, empty ones are passed over, and all are as wide', async () => {
  const cells = [['a', 'b', 'c'], [null], ['1', null, null]]
  const rows = await read(makeWorkbook({ List: { cells } }))
  expect(rows).toMatchObject([
    { line: 1, cells: ['a', 'b', 'c'] },
    { line: 3, cells: ['1', '', ''] },
  ])
})

describe('the sheet', () => {
  const two = makeWorkbook({
    List: { cells: [['a']] },
    Prices: { cells: [['b']] },
    Notes: { cells: [['c']], hidden: true },
  })

  test('is the only one that can be seen', async () => {
    const one = makeWorkbook({ List: { cells: [['a']] }, Notes: { cells: [['c']], hidden: true } })
    expect(await read(one)).toMatchObject([{ cells: ['a'] }])
  })

  test('is the one that is named, though it be hidden', async () =>
    expect(await read(two, 'Notes')).toMatchObject([{ cells: ['c'] }]))

  test.each([null, 'Absent'])('must be named where several can be seen, and be there (%j)', async asked => {
    expect(await problemOf(read(two, asked))).toMatchObject({
      code: 'sheet-not-settled',
      asked,
      sheets: [
        { name: 'List', hidden: false },
        { name: 'Prices', hidden: false },
        { name: 'Notes', hidden: true },
      ],
    })
  })
})

describe('one clear refusal', () => {
  const sound = makeWorkbook({ List: { cells: Array.from({ length: 200 }, (_, at) => [`P${at}`, 'pump']) } })
  const refused = async (bytes: Buffer, why: RegExp) =>
    expect(await problemOf(read(bytes))).toMatchObject({
      code: 'file-unreadable',
      why: expect.stringMatching(why),
    })

  test('of a workbook that was cut off', () =>
    refused(sound.subarray(0, sound.length - 100), /cut off|damaged/))

  test('of a workbook in which one bit of any packed file is another', async () => {
    for (let at = 200; at < sound.length / 2; at += 211) {
      const damaged = Buffer.from(sound)
      damaged[at] = (damaged[at] ?? 0) ^ 0x10
      const outcome = await read(damaged).then(
        rows => rows.map(({ cells }) => cells),
        (thrown: { problem?: { code?: string } }) => thrown.problem?.code,
      )
      // A bit of a file's date is nobody's loss; whatever is read must be all that was there.
      if (outcome !== 'file-unreadable')
        expect(outcome).toEqual((await read(sound)).map(({ cells }) => cells))
    }
  })

  test('of an archive that says it holds little and swells without end', () =>
    refused(makeBomb(1_000), /damaged/))

  test('of an archive that swells as it says', () =>
    refused(makeBomb(2 ** 31), /unpacks to more than 192 MB/))

  test('of an archive that is no workbook', () => {
    const renamed = Buffer.from(
      sound.toString('latin1').replaceAll('xl/workbook.xml', 'xl/werkbook.xml'),
      'latin1',
    )
    return refused(renamed, /no workbook of the kind/)
  })
})

/** The sound workbook whose sheet says that it unpacks to so many bytes, which are another number than there are. */
function makeBomb(says: number): Buffer {
  const archive = makeWorkbook({ List: { cells: [['a'.repeat(30_000)]] } })
  const entry = archive.indexOf(Buffer.from('PK\u0001\u0002', 'latin1'))
  archive.writeUInt32LE(says, entry + 24)
  return archive
}

test('a formula whose result was not saved rejects its row', async () => {
  const [, row] = await read(makeWorkbook({ List: { cells: [['a'], [{ t: 'n', f: 'B1+1' }]] } }))
  expect(row?.fault?.reason).toMatch(/whose result was not saved/)
})
