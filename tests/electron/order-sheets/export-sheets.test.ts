import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { TestShop } from '../../builders/open-test-shop.ts'
import { findSchemaFaults } from '../../outside/ubl-2.1/order-schema.ts'
import { draft, openSheetShop, send } from './sheet-shop.ts'

let shop: TestShop
let folder: string
let day = '2026-11-23T09:00:00Z'
beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-test-'))
  day = '2026-11-23T09:00:00Z'
  shop = await openSheetShop({ now: () => new Date(day) })
})
afterEach(() => {
  shop.close()
  rmSync(folder, { recursive: true })
})

const written = (within: string): Record<string, Buffer> =>
  Object.fromEntries(
    readdirSync(within, { recursive: true, withFileTypes: true })
      .filter(entry => entry.isFile())
      .map(entry => {
        const file = path.join(entry.parentPath, entry.name)
        return [path.relative(within, file), readFileSync(file)]
      }),
  )

test('a checked sheet is written as four files in a folder of its own', async () => {
  const { number } = await draft(shop, 'DALE', { 'P-100': 6 })
  await shop.answer('order-sheets.check-sheet', { number })
  const out = path.join(folder, 'new', 'orders')
  const { sheets, buyerIsNamed } = await shop.answer('order-sheets.export-sheets', {
    numbers: [number],
    folder: out,
  })
  const names = ['csv', 'pdf', 'txt', 'xml'].map(kind => `${number}-DALE/order-${number}.${kind}`)
  expect(sheets).toEqual([
    {
      ...{ number, supplier: 'DALE', state: 'checked', currency: 'GBP', value: '65.98', lines: 1 },
      files: names.map(name => path.join(out, name)),
    },
  ])
  expect(buyerIsNamed).toBe(false)
  const files = written(out)
  expect(Object.keys(files).sort()).toEqual(names)
  expect(findSchemaFaults(String(files[names[3] ?? '']))).toEqual([])
  expect(String(files[names[0] ?? ''])).toContain(
    `${number},2026-11-23,,1,D100,P-100,Drain pump,6,1,10.005,60.03,GBP`,
  )
  expect(String(files[names[2] ?? ''])).toContain('Dale Spares\r\n')
  expect(String(files[names[1] ?? '']).slice(0, 8)).toBe('%PDF-1.7')
})

test('what was sent is written again byte for byte, whatever has changed since', async () => {
  const { number } = await draft(shop, 'DALE', { 'P-100': 6 })
  await shop.answer('order-sheets.check-sheet', { number })
  const into = async (name: string) => {
    await shop.answer('order-sheets.export-sheets', { numbers: [number], folder: path.join(folder, name) })
    return written(path.join(folder, name))
  }
  const before = await into('checked')
  day = '2026-11-25T09:00:00Z'
  await shop.answer('order-sheets.send-sheet', { number })
  expect(await into('sent')).toEqual(before)
  day = '2027-03-01T09:00:00Z'
  await shop.answer('order-sheets.save-buyer', { buyer: { name: 'Otterholt Repairs' } })
  await shop.answer('order-sheets.save-ordering', {
    supplier: 'DALE',
    ordering: {
      ...{ account: 'AC-1', separator: ';', decimalSign: ',', dateOrder: 'dmy' },
      columns: [
        { heading: 'Nr', holds: 'supplier-code' },
        { heading: 'Qty', holds: 'quantity' },
      ],
    },
  })
  await shop.load({ 'suppliers.csv': 'supplier,name,currency\nDALE,Dale and Sons,GBP\n' })
  expect(await into('again')).toEqual(before)
  // The next sheet goes as it is wanted now.
  const next = await send(shop, 'DALE', { 'P-100': 6 })
  await shop.answer('order-sheets.export-sheets', { numbers: [next.number], folder })
  const csv = written(path.join(folder, `${next.number}-DALE`))[`order-${next.number}.csv`]
  expect(String(csv)).toBe('Nr;Qty\r\nD100;6\r\n')
  const xml = String(written(path.join(folder, `${next.number}-DALE`))[`order-${next.number}.xml`])
  expect(xml).toContain('<cbc:Name>Otterholt Repairs</cbc:Name>')
  expect(xml).toContain('<cbc:SupplierAssignedAccountID>AC-1</cbc:SupplierAssignedAccountID>')
})

test('to write the same again changes nothing; other files of that name are left as they are', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  const out = { numbers: [number], folder }
  await shop.answer('order-sheets.export-sheets', out)
  await shop.answer('order-sheets.export-sheets', out)
  const file = path.join(folder, `${number}-DALE`, `order-${number}.csv`)
  writeFileSync(file, 'noted by hand')
  const other = await send(shop, 'HOLM', { 'P-101': 1 })
  const both = { numbers: [other.number, number], folder }
  expect(await shop.ask('order-sheets.export-sheets', both)).toEqual({
    ok: false,
    problem: { code: 'file-exists', file: path.join(folder, `${number}-DALE`) },
  })
  expect(readFileSync(file, 'utf8')).toBe('noted by hand')
  expect(readdirSync(folder)).toEqual([`${number}-DALE`])
})

test('where nothing can be written, nothing is left', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  writeFileSync(path.join(folder, 'a-file'), '')
  expect(
    await shop.ask('order-sheets.export-sheets', {
      numbers: [number],
      folder: path.join(folder, 'a-file'),
    }),
  ).toMatchObject({ ok: false, problem: { code: 'folder-unwritable' } })
  // Half of a folder that an earlier try left behind is no folder of a sheet.
  mkdirSync(path.join(folder, `.${number}-DALE.part-${process.pid}`))
  await shop.answer('order-sheets.export-sheets', { numbers: [number], folder })
  expect(readdirSync(folder).sort()).toEqual([`${number}-DALE`, 'a-file'])
  expect(existsSync(path.join(folder, `${number}-DALE`, `order-${number}.pdf`))).toBe(true)
})

test('a draft and a cancelled sheet are not written', async () => {
  const { number } = await draft(shop, 'DALE', { 'P-100': 6 })
  expect(await shop.ask('order-sheets.export-sheets', { numbers: [number], folder })).toMatchObject({
    ok: false,
    problem: { code: 'sheet-state-forbids', state: 'draft', act: 'export' },
  })
  await shop.answer('order-sheets.cancel-sheet', { number, reason: 'not needed' })
  expect(await shop.ask('order-sheets.export-sheets', { numbers: [number], folder })).toMatchObject({
    ok: false,
    problem: { code: 'sheet-state-forbids', state: 'cancelled', act: 'export' },
  })
  expect(readdirSync(folder)).toEqual([])
})

test('until somebody says who orders, the shop’s first location does', async () => {
  expect(await shop.answer('order-sheets.read-buyer', {})).toMatchObject({
    buyer: { name: 'The shop', town: '' },
    isSaved: false,
  })
  await shop.answer('order-sheets.save-buyer', { buyer: { name: 'Otterholt Repairs', country: 'GB' } })
  expect(await shop.answer('order-sheets.read-buyer', {})).toMatchObject({
    buyer: { name: 'Otterholt Repairs', country: 'GB' },
    isSaved: true,
  })
})

test.each([
  ['no quantity', [{ heading: 'Nr', holds: 'part-number' as const }], /no column holds the quantity/],
  ['no part', [{ heading: 'Qty', holds: 'quantity' as const }], /no column says which part/],
])('columns with %s are no order', async (_title, columns, why) => {
  const ordering = {
    account: '',
    separator: ',' as const,
    decimalSign: '.' as const,
    dateOrder: 'ymd' as const,
  }
  const reply = await shop.ask('order-sheets.save-ordering', {
    supplier: 'DALE',
    ordering: { ...ordering, columns },
  })
  expect(reply).toMatchObject({ ok: false, problem: { code: 'malformed', why: expect.stringMatching(why) } })
})
