import { mkdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { GivenInput } from '../../../../shared-schemas/index.ts'
import { figure, makeWorkbook } from '../reading/make-workbook.ts'
import { latin1, layoutOf, openSupplierShop, priceList, type SupplierShop } from './supplier-shop.ts'

let shop: SupplierShop
beforeEach(async () => {
  shop = await openSupplierShop()
})
afterEach(() => shop.close())

const prices = `sep=;\r\nArtikel-Nr.;Bezeichnung;Preis;ab Menge;VE\r\n0048-0121;Laugenpumpe für Türe;18,40;1;1\r\n0048-0122;"Pumpe; groß\r\nzweite Zeile";1.234,50;10;5\r\n`

async function load(
  name: string,
  content: string | Uint8Array,
  asked: Partial<GivenInput<'catalogue.load-files'>> = {},
) {
  return await shop.ask('catalogue.load-files', {
    path: shop.write(name, content),
    layout: priceList.name,
    ...asked,
  })
}

test('a list in Windows-1252 with semicolons, decimal commas and a sep= line loads as its layout says', async () => {
  await shop.answer('catalogue.save-layout', { layout: priceList })
  const reply = await load('Preise.csv', latin1(prices), { showChanges: 10 })
  expect(reply).toMatchObject({
    ok: true,
    value: { files: [{ file: 'Preise.csv', added: 1, changed: 1, rejected: 0 }], rejected: [] },
  })
  const written = reply.ok ? JSON.stringify(reply.value.changes) : ''
  expect(written).toContain('1234.50')
  expect(written).toContain('18.40')
})

test('a dry run with a layout that is not saved changes nothing and keeps no layout', async () => {
  const path = shop.write('Preise.csv', latin1(prices))
  const report = await shop.answer('catalogue.load-files', { path, trialLayout: priceList, dryRun: true })
  expect(report.files).toMatchObject([{ added: 1, changed: 1 }])
  expect((await shop.answer('catalogue.list-loads', {})).loads).toHaveLength(1)
  expect((await shop.answer('catalogue.list-layouts', {})).layouts).toEqual([])
})

test('a layout that is not saved loads nothing in earnest', async () => {
  const path = shop.write('Preise.csv', latin1(prices))
  expect(await shop.ask('catalogue.load-files', { path, trialLayout: priceList })).toMatchObject({
    ok: false,
    problem: { code: 'malformed', where: 'trialLayout' },
  })
})

describe('a file is refused as a whole', () => {
  const refused: readonly (readonly [string, string | Uint8Array, object])[] = [
    [
      'whose headings are no longer those of the layout, by name',
      latin1(prices.replace('Preis;', 'Nettopreis;')),
      { code: 'layout-misfit', missing: ['Preis'], added: ['Nettopreis'], repeated: [] },
    ],
    [
      'in which a heading that is read comes twice',
      latin1(prices.replace('Bezeichnung', 'Preis')),
      { code: 'layout-misfit', missing: [], added: [], repeated: ['Preis'] },
    ],
    [
      'that was saved as UTF-8 this time, since as Windows-1252 it would read as other letters',
      prices,
      {
        code: 'encoding-not-certain',
        asked: 'windows-1252',
        found: { encoding: 'utf-8', certainty: 'likely' },
      },
    ],
    [
      'that holds nothing',
      '',
      { code: 'layout-misfit', missing: ['Artikel-Nr.', 'Preis', 'ab Menge', 'VE'] },
    ],
    ['that is a picture', Buffer.from('89504e470d0a1a0a00ff', 'hex'), { code: 'layout-misfit' }],
    ['that is an old workbook', Buffer.from('d0cf11e0a1b11ae10000', 'hex'), { code: 'file-unreadable' }],
    ['that only begins as a workbook', Buffer.from('504b030414000000', 'hex'), { code: 'file-unreadable' }],
  ]
  test.each(refused)('%s', async (_title, content, problem) => {
    await shop.answer('catalogue.save-layout', { layout: priceList })
    expect(await load('Preise.csv', content)).toMatchObject({ ok: false, problem })
    expect((await shop.answer('catalogue.list-loads', {})).loads).toHaveLength(1)
  })

  test('that is in Windows-1252 where the layout names UTF-8', async () => {
    await shop.answer('catalogue.save-layout', {
      layout: { ...priceList, reading: { ...priceList.reading, encoding: 'utf-8' } },
    })
    expect(await load('Preise.csv', latin1(prices))).toMatchObject({
      ok: false,
      problem: {
        code: 'encoding-not-certain',
        asked: 'utf-8',
        found: { encoding: 'windows-1252', certainty: 'open' },
      },
    })
  })

  test('where nobody has named the encoding and the bytes leave it open, with what they could be', async () => {
    await shop.answer('catalogue.save-layout', {
      layout: { ...priceList, reading: { ...priceList.reading, encoding: null } },
    })
    const reply = await load('Preise.csv', latin1(prices))
    expect(reply).toMatchObject({ ok: false, problem: { code: 'encoding-not-certain', asked: null } })
    const problem = reply.ok ? undefined : reply.problem
    const options = problem?.code === 'encoding-not-certain' ? problem.found.options : []
    expect(options.find(({ encoding }) => encoding === 'windows-1252')?.samples[0]).toContain('für Türe')
    expect(options.find(({ encoding }) => encoding === 'windows-1251')?.samples[0]).toContain('fьr')
    expect(options.map(({ encoding }) => encoding)).not.toContain('utf-8')
  })
})

test('naming the encoding for this once settles the doubt', async () => {
  await shop.answer('catalogue.save-layout', { layout: priceList })
  expect(await load('Preise.csv', prices, { encoding: 'utf-8' })).toMatchObject({ ok: true })
})

test('a mark at the beginning of the file settles its encoding whatever the layout says', async () => {
  await shop.answer('catalogue.save-layout', { layout: priceList })
  expect(await load('Preise.csv', `\u{feff}${prices}`)).toMatchObject({ ok: true, value: { rejected: [] } })
  const wide = Buffer.from(`\u{feff}${prices.replace('18,40', '18,41')}`, 'utf16le')
  expect(await load('Preise.csv', wide)).toMatchObject({
    ok: true,
    value: { files: [{ changed: 1, unchanged: 1 }] },
  })
})

describe('a list with one row a part', () => {
  const wide = layoutOf({
    name: 'Fits',
    feeds: 'fitments.csv',
    reading: { encoding: 'utf-8', separator: '\t', sheet: null, headerRow: 2 },
    headings: ['Part', 'Models', 'From'],
    columns: [
      { column: 'says', constant: 'includes' },
      { column: 'brand', constant: 'Ostrel' },
      { column: 'source', constant: 'Harrow list' },
      { column: 'part_number', heading: 'Part' },
      { column: 'made_from', heading: 'From', dateOrder: 'dmy' },
    ],
    shape: { kind: 'wide-cell', column: 'model_number', heading: 'Models', separators: [',', ';', '\n'] },
  })
  const list =
    'Fitting list 2026\nPart\tModels\tFrom\n0048-0122\t"OW 4512/01, OW 4512/02;\nOW 453O/01"\t03/2014\n'

  test('says as many statements as it names models, and rejects the one model that is not there', async () => {
    await shop.answer('catalogue.save-layout', { layout: wide })
    const file = shop.write('fits.txt', list)
    const report = await shop.answer('catalogue.load-files', { path: file, layout: 'fits' })
    expect(report.files).toMatchObject([{ file: 'fits.txt', added: 2, rejected: 1 }])
    expect(report.rejected).toMatchObject([
      { file: 'fits.txt', line: 3, column: 'Models', value: 'OW 453O/01', mend: 'OW 4530/01' },
    ])
    const [latest] = (await shop.answer('catalogue.list-loads', {})).loads
    expect(latest).toMatchObject({ path: file, layout: 'Fits' })
  })

  test('may hold the models in columns of their own', async () => {
    const layout = {
      ...wide,
      headings: ['Part', 'Model 1', 'Model 2', 'From'],
      shape: { kind: 'wide-columns' as const, column: 'model_number', headings: ['Model 1', 'Model 2'] },
    }
    const text =
      'Fitting list\nPart\tModel 1\tModel 2\tFrom\n0048-0122\tOW 4512/01\tOW 4530/01\t\n0048-0123\tOW 4512/02\t\t\n0048-0121\t\t\t\n'
    const report = await shop.answer('catalogue.load-files', {
      path: shop.write('fits.txt', text),
      trialLayout: layout,
      dryRun: true,
    })
    expect(report.files).toMatchObject([{ added: 3, rejected: 1 }])
    expect(report.rejected).toMatchObject([{ line: 5, reason: expect.stringMatching(/name at least one/) }])
  })
})

describe('a workbook', () => {
  const layout = layoutOf({
    ...priceList,
    reading: { encoding: null, separator: null, sheet: null, headerRow: 1 },
    columns: priceList.columns.map(column =>
      column.column === 'price' ? { ...column, decimalSign: '.' as const } : column,
    ),
  })

  test('loads through its layout, and its rejected rows load again as CSV', async () => {
    await shop.answer('catalogue.save-layout', { layout })
    const cells = [
      [...priceList.headings],
      ['0048-0121', 'Pumpe; groß, für Türe', figure(1234.5, '#,##0.00'), figure(1, '0'), figure(1, '0')],
      ['0048-0122', 'Pumpe', { t: 'e' as const, v: 0x2a }, '1', '1'],
    ]
    const rejectsFile = path.join(shop.folder, 'rejects.csv')
    const report = await shop.answer('catalogue.load-files', {
      path: shop.write('list.xlsx', makeWorkbook({ Liste: { cells } })),
      layout: layout.name,
      rejectsFile,
      showChanges: 5,
    })
    expect(report.files).toMatchObject([{ file: 'list.xlsx', changed: 1, rejected: 1 }])
    expect(JSON.stringify(report.changes)).toContain('1234.50')
    expect(report.rejected).toMatchObject([
      { line: 3, column: 'Preis', value: '#N/A', reason: expect.stringMatching(/the error of a formula/) },
    ])
    const mended = readFileSync(rejectsFile, 'utf8').replace('Pumpe,#N/A', 'Pumpe,9.90')
    const again = await shop.answer('catalogue.load-files', {
      path: shop.write('mended.csv', mended),
      layout: layout.name,
    })
    expect(again.files).toMatchObject([{ added: 1, rejected: 0 }])
  })
})

test('a file without headings is matched by the places of its columns', async () => {
  const layout = layoutOf({
    ...priceList,
    reading: { encoding: 'windows-1252', separator: ';', sheet: null, headerRow: null },
    headings: ['column 1', 'column 2'],
    columns: [
      { column: 'supplier', constant: 'DEALER' },
      { column: 'part_number', heading: 'column 1' },
      {
        column: 'price',
        heading: 'column 2',
        decimalSign: ',',
        words: [{ theirs: 'Gratis', ours: '0.01' }],
      },
    ],
  })
  const report = await shop.answer('catalogue.load-files', {
    path: shop.write('list.csv', '0048-0122;9,90\nPX 7;GRATIS\n'),
    trialLayout: layout,
    dryRun: true,
    showChanges: 5,
  })
  expect(report.files).toMatchObject([{ added: 2, rejected: 0 }])
  expect(JSON.stringify(report.changes)).toContain('0.01')
})

describe('rejected rows', () => {
  const wrong = `Artikel-Nr.;Bezeichnung;Preis;ab Menge;VE\r\n0048-O121;=Pumpe für Türe;18.40;1;1\r\nPX 7;-5;9,90;1O;1\r\n0048-0122;Pumpe;9,90\r\n0048-0123;"a;b";3,50;1;1\r\n`

  test('say line, heading, cell and what was probably meant', async () => {
    await shop.answer('catalogue.save-layout', { layout: priceList })
    const reply = await load('Preise.csv', latin1(wrong))
    expect(reply).toMatchObject({
      ok: true,
      value: {
        files: [{ added: 1, rejected: 3 }],
        rejected: [
          { line: 2, column: 'Preis', value: '18.40', mend: '18,40' },
          { line: 3, column: 'ab Menge', value: '1O', mend: '10' },
          { line: 4, column: '', value: '', mend: null },
        ],
      },
    })
  })

  test('are written in the headings of their file, and load again once they are mended', async () => {
    await shop.answer('catalogue.save-layout', { layout: priceList })
    const rejectsFile = path.join(shop.folder, 'rejects.csv')
    await load('Preise.csv', latin1(wrong), { rejectsFile })
    const text = readFileSync(rejectsFile, 'utf8')
    expect(text.split('\r\n')[0]).toBe(
      '\u{feff}Artikel-Nr.;Bezeichnung;Preis;ab Menge;VE;rejected_line;rejected_column;rejected_value;rejected_reason;proposed_mend',
    )
    expect(text).toContain("0048-O121;'=Pumpe für Türe;18.40;1;1;2;Preis;18.40;")
    // As it stands, everything that was wrong still is, the row that was filled up to its width among it.
    const again = await shop.answer('catalogue.load-files', { path: rejectsFile, layout: priceList.name })
    expect(again.files).toMatchObject([{ added: 0, changed: 0, unchanged: 0, rejected: 3 }])
    const mended = text
      .replace('0048-O121', '0048-0121')
      .replace('18.40;1;1;2', '18,40;1;1;2')
      .replace(';1O;1;', ';10;1;')
      .replace('Pumpe;"9,90";;;4;the whole row', 'Pumpe;"9,90";1;1;4;')
    const last = await shop.answer('catalogue.load-files', {
      path: shop.write('mended.csv', mended),
      layout: priceList.name,
    })
    expect(last.rejected).toEqual([])
    expect(last.files).toMatchObject([{ added: 2, changed: 1, rejected: 0 }])
  })

  test('of a folder stand in a folder, one file for each, which loads again as it is', async () => {
    const target = path.join(shop.folder, 'rejects')
    const source = path.join(shop.folder, 'source')
    mkdirSync(source)
    shop.write('source/models.csv', 'brand,model_number,made_from\nOstrel,OW 9,2014/6\nOstrel,OW 10,2014\n')
    shop.write('source/offers.csv', 'supplier,part_number,price\nDEALER,PX 7,"12,50"\n')
    const report = await shop.answer('catalogue.load-files', { path: source, rejectsFile: target })
    expect(report.rejected).toMatchObject([
      { file: 'models.csv', value: '2014/6', mend: '2014-06' },
      { file: 'offers.csv', value: '12,50', mend: '12.50' },
    ])
    const models = path.join(target, 'models.csv')
    shop.write('rejects/models.csv', readFileSync(models, 'utf8').replace('OW 9,2014/6', 'OW 9,2014-06'))
    const again = await shop.answer('catalogue.load-files', { path: target })
    expect(again.files).toMatchObject([
      { file: 'models.csv', added: 1, rejected: 0 },
      { file: 'offers.csv', added: 0, rejected: 1 },
    ])
  })

  test('of a row with many models stand once, with everything that is wrong', async () => {
    const layout = layoutOf({
      name: 'Fits',
      feeds: 'fitments.csv',
      headings: ['Part', 'Models'],
      columns: [
        { column: 'says', constant: 'includes' },
        { column: 'brand', constant: 'Ostrel' },
        { column: 'source', constant: 'Harrow list' },
        { column: 'part_number', heading: 'Part' },
      ],
      shape: { kind: 'wide-cell', column: 'model_number', heading: 'Models', separators: [','] },
    })
    await shop.answer('catalogue.save-layout', { layout })
    const rejectsFile = path.join(shop.folder, 'rejects.csv')
    const report = await shop.answer('catalogue.load-files', {
      path: shop.write('fits.csv', 'Part;Models\n0048-0123;OW 8, OW 4512/01, OW 9\n'),
      layout: 'Fits',
      rejectsFile,
    })
    expect(report.files).toMatchObject([{ added: 1, rejected: 2 }])
    const text = readFileSync(rejectsFile, 'utf8')
    expect(text).toContain('\r\n0048-0123;"OW 8, OW 4512/01, OW 9";2;"Models | Models";"OW 8 | OW 9";')
    const again = await shop.answer('catalogue.load-files', {
      path: shop.write('mended.csv', text.replace('OW 8,', 'OW 4530/01,').replace(', OW 9"', '"')),
      layout: 'Fits',
    })
    expect(again.files).toMatchObject([{ added: 1, unchanged: 1, rejected: 0 }])
  })

  test('never take the place of the file that they came from', async () => {
    const file = shop.write('offers.csv', 'supplier,part_number,price\nDEALER,PX 7,"12,50"\n')
    expect(await shop.ask('catalogue.load-files', { path: file, rejectsFile: file })).toMatchObject({
      ok: false,
      problem: { code: 'file-exists' },
    })
  })
})
