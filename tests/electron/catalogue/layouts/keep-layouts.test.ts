import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { GivenInput } from '../../../../shared-schemas/index.ts'
import { latin1, layoutOf, openSupplierShop, priceList, type SupplierShop } from './supplier-shop.ts'

let shop: SupplierShop
beforeEach(async () => {
  shop = await openSupplierShop()
})
afterEach(() => shop.close())

type GivenLayout = GivenInput<'catalogue.save-layout'>['layout']

const full: GivenLayout = {
  ...priceList,
  name: 'Harrow prices',
  headings: [...priceList.headings, 'Art', 'Modelle'],
  feeds: 'offers.csv',
  columns: priceList.columns.map(column => ({ ...column, words: [{ theirs: 'St', ours: '1' }] })),
  shape: { kind: 'wide-cell', column: 'supplier_code', heading: 'Modelle', separators: [';', '\n'] },
}

test('a layout comes back as it was saved, with who and when', async () => {
  await shop.answer('catalogue.save-layout', { layout: full, initials: 'mk' })
  const { layouts } = await shop.answer('catalogue.list-layouts', {})
  expect(layouts).toMatchObject([{ ...full, initials: 'mk', savedAt: '2026-11-23T09:00:00.000Z' }])
})

test('one of the same name, in whatever letter case, is replaced only when that is asked for', async () => {
  await shop.answer('catalogue.save-layout', { layout: full })
  const again = { layout: { ...priceList, name: 'HARROW PRICES' } }
  expect(await shop.ask('catalogue.save-layout', again)).toMatchObject({
    ok: false,
    problem: { code: 'layout-exists', name: 'Harrow prices' },
  })
  expect(await shop.answer('catalogue.save-layout', { ...again, replace: true })).toMatchObject({
    replaced: true,
  })
  expect((await shop.answer('catalogue.list-layouts', {})).layouts).toMatchObject([{ name: 'HARROW PRICES' }])
})

test('a layout is renamed, and not to the name of another', async () => {
  await shop.answer('catalogue.save-layout', { layout: full })
  await shop.answer('catalogue.save-layout', { layout: { ...priceList, name: 'Other' } })
  expect(
    await shop.ask('catalogue.rename-layout', { name: 'harrow prices', newName: 'other' }),
  ).toMatchObject({ ok: false, problem: { code: 'layout-exists' } })
  const { layout } = await shop.answer('catalogue.rename-layout', {
    name: 'harrow prices',
    newName: 'Harrow 2027',
  })
  expect(layout).toMatchObject({ ...full, name: 'Harrow 2027' })
})

test('a layout is removed with all that belongs to it', async () => {
  await shop.answer('catalogue.save-layout', { layout: full })
  expect(await shop.answer('catalogue.remove-layout', { name: 'Harrow prices' })).toMatchObject({
    removed: full,
  })
  await shop.answer('catalogue.save-layout', { layout: full })
  expect((await shop.answer('catalogue.list-layouts', {})).layouts).toMatchObject([full])
})

test.each([
  ['catalogue.remove-layout', { name: 'Absent' }],
  ['catalogue.rename-layout', { name: 'Absent', newName: 'x' }],
  ['catalogue.load-files', { path: 'x.csv', layout: 'Absent' }],
] as const)('%s of one that is not there names those that are', async (name, input) => {
  await shop.answer('catalogue.save-layout', { layout: full })
  expect(await shop.ask(name, input)).toMatchObject({
    ok: false,
    problem: { code: 'layout-not-found', name: 'Absent', known: ['Harrow prices'] },
  })
})

describe('a layout is refused, with everything that is wrong with it,', () => {
  const [supplier, number, price] = priceList.columns
  const columns = [supplier, number, price].filter(column => column !== undefined)
  const cases: readonly (readonly [string, Partial<GivenLayout>, RegExp])[] = [
    ['that feeds no file of ours', { feeds: 'prices.csv' }, /prices.csv is no catalogue file/],
    [
      'that fills a column we have not',
      { columns: [...columns, { column: 'colour', constant: 'x' }] },
      /no column colour/,
    ],
    [
      'that fills a column twice',
      { columns: [...columns, { column: 'price', constant: '1' }] },
      /price is filled twice/,
    ],
    ['that leaves out what every row needs', { columns: columns.slice(0, 2) }, /nothing fills price/],
    ['that reads a heading which is not there', { headings: ['Artikel-Nr.'] }, /no heading “Preis”/],
    [
      'that reads a heading which comes twice',
      { headings: [...priceList.headings, 'Preis'] },
      /“Preis” comes more than once/,
    ],
    [
      'that has a sign for what is the same in every row',
      { columns: [...columns, { column: 'pack', constant: '1', decimalSign: ',' }] },
      /pack is the same in every row/,
    ],
  ]
  test.each(cases)('%s', async (_title, change, fault) => {
    const reply = await shop.ask('catalogue.save-layout', { layout: layoutOf({ ...priceList, ...change }) })
    expect(reply).toMatchObject({ ok: false, problem: { code: 'layout-wrong' } })
    const problem = reply.ok ? undefined : reply.problem
    expect(problem?.code === 'layout-wrong' ? problem.faults.join('; ') : '').toMatch(fault)
    expect((await shop.answer('catalogue.list-layouts', {})).layouts).toEqual([])
  })
})

const list = `Preisliste 2026;;;;\r\nArtikel-Nr.;Bezeichnung;Preis;ab Menge;VE\r\n0048-0121;Laugenpumpe für Türe;18,40;1;1\r\n`

describe('a preview', () => {
  test('shows the first rows as they would read, what is certain and what is not, and the layouts that fit', async () => {
    await shop.answer('catalogue.save-layout', { layout: priceList })
    const path = shop.write('Preise.csv', latin1(list))
    expect(await shop.answer('catalogue.preview-file', { path, reading: { headerRow: 2 } })).toMatchObject({
      file: 'Preise.csv',
      kind: 'csv',
      encoding: { encoding: 'windows-1252', certainty: 'open' },
      separator: { separator: ';', certainty: 'certain' },
      separatorLine: false,
      reading: { encoding: 'windows-1252', separator: ';', headerRow: 2 },
      above: [{ line: 1, cells: ['Preisliste 2026', '', '', '', ''] }],
      headings: priceList.headings,
      rows: [{ line: 3, cells: ['0048-0121', 'Laugenpumpe für Türe', '18,40', '1', '1'], fault: null }],
      layouts: ['Harrow list'],
    })
  })

  test('shows the text as it reads in the encoding that a person tries', async () => {
    const path = shop.write('Preise.csv', latin1(list))
    const { rows } = await shop.answer('catalogue.preview-file', {
      path,
      reading: { headerRow: 2, encoding: 'windows-1251' },
    })
    expect(rows[0]?.cells[1]).toBe('Laugenpumpe fьr Tьre')
  })

  test('of a file that is not there is refused', async () =>
    expect(await shop.ask('catalogue.preview-file', { path: 'absent.csv' })).toMatchObject({
      ok: false,
      problem: { code: 'file-unreadable', why: 'there is no such file or folder' },
    }))
})

describe('a proposal', () => {
  test('matches the headings by the words that lists use, and says which it is sure of', async () => {
    const path = shop.write('Preise.csv', latin1(list))
    const proposal = await shop.answer('catalogue.propose-layout', { path, reading: { headerRow: 2 } })
    expect(proposal).toMatchObject({
      feeds: 'offers.csv',
      unmatched: ['Bezeichnung'],
      shape: { kind: 'long' },
    })
    const matched = proposal.columns.map(({ column, heading, decimalSign }) => [column, heading, decimalSign])
    expect(matched).toEqual([
      ['supplier', null, null],
      ['part_number', 'Artikel-Nr.', null],
      ['supplier_code', null, null],
      ['price', 'Preis', ','],
      ['from_quantity', 'ab Menge', null],
      ['pack', 'VE', null],
      ['minimum', null, null],
    ])
    expect((await shop.answer('catalogue.list-layouts', {})).layouts).toEqual([])
  })

  test.each([
    [
      'Teile-Nr.;Passend für;von\nPX 7;OW 1, OW 2;2014\n',
      { kind: 'wide-cell', heading: 'Passend für', separators: [','] },
    ],
    ['Part no;Model 1;Model 2\nPX 7;OW 1;OW 2\n', { kind: 'wide-columns', headings: ['Model 1', 'Model 2'] }],
    ['Part no;Model\nPX 7;OW 1\n', { kind: 'long' }],
  ])('sees how many models a row names: %j', async (text, shape) => {
    const path = shop.write('fits.csv', text)
    expect(await shop.answer('catalogue.propose-layout', { path, feeds: 'fitments.csv' })).toMatchObject({
      shape,
    })
  })
})
