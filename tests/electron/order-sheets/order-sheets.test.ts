import { afterEach, beforeEach, expect, test } from 'vitest'
import type { TestShop } from '../../builders/open-test-shop.ts'
import { draft, openSheetShop, send } from './sheet-shop.ts'

let shop: TestShop
beforeEach(async () => {
  shop = await openSheetShop()
})
afterEach(() => shop.close())

test('a draft takes number, price and code from the supplier’s offer, and carriage from its terms', async () => {
  const sheet = await draft(shop, 'dale', { 'P-100': 6, 'S-2': 3 })
  expect(sheet).toMatchObject({
    number: '2026-0001',
    supplier: 'DALE',
    supplierName: 'Dale Spares',
    currency: 'GBP',
    state: 'draft',
    // 6 × 10.005 = 60.03; 3 × 2.50 = 7.50.
    net: '67.53',
    carriage: '5.95',
    total: '73.48',
    belowMinimumBy: null,
    createdBy: 'AB',
    sentAt: null,
  })
  expect(sheet.lines).toMatchObject([
    { line: 1, partNumber: 'P-100', supplierCode: 'D100', unitPrice: '10.005', amount: '60.03', toCome: 6 },
    { line: 2, partNumber: 'S-2', supplierCode: null, unitPrice: '2.50', amount: '7.50', toCome: 3 },
  ])
})

test('from the agreed order value on, carriage is paid; below the minimum order, what is missing is told', async () => {
  expect(await draft(shop, 'DALE', { 'P-100': 12 })).toMatchObject({ net: '120.06', carriage: '0.00' })
  expect(await draft(shop, 'DALE', { 'S-2': 2 })).toMatchObject({ net: '5.00', belowMinimumBy: '20.00' })
})

test('a carriage that a person gave stays', async () => {
  const { sheets } = await shop.answer('order-sheets.draft-sheets', {
    sheets: [{ supplier: 'DALE', carriage: '1.5', lines: [{ part: 'P-100', quantity: 12 }] }],
  })
  const [sheet] = sheets
  expect(sheet).toMatchObject({ carriage: '1.50', carriageIsGiven: true })
  const { sheet: checked } = await shop.answer('order-sheets.check-sheet', { number: sheet?.number ?? '' })
  expect(checked).toMatchObject({ state: 'checked', carriage: '1.50' })
})

test('numbers run on without a gap, also after a refusal and a cancelled sheet, and begin anew each year', async () => {
  await draft(shop, 'DALE', { 'P-100': 1 })
  const refused = await shop.ask('order-sheets.draft-sheets', {
    sheets: [
      { supplier: 'DALE', lines: [{ part: 'P-100', quantity: 1 }] },
      { supplier: 'DALE', lines: [{ part: 'M-1', quantity: 1 }] },
    ],
  })
  expect(refused).toEqual({
    ok: false,
    problem: { code: 'price-not-known', part: 'M-1', supplier: 'DALE' },
  })
  const second = await draft(shop, 'DALE', { 'P-100': 1 })
  await shop.answer('order-sheets.cancel-sheet', { number: second.number, reason: 'twice' })
  await draft(shop, 'HOLM', { 'P-101': 1 })
  const { sheets } = await shop.answer('order-sheets.list-sheets', {})
  expect(sheets.map(({ number, state }) => [number, state])).toEqual([
    ['2026-0003', 'draft'],
    ['2026-0002', 'cancelled'],
    ['2026-0001', 'draft'],
  ])
})

test('each year has its own numbers', async () => {
  let day = '2026-12-31T20:00:00Z'
  const years = await openSheetShop({ now: () => new Date(day) })
  expect((await draft(years, 'DALE', { 'P-100': 1 })).number).toBe('2026-0001')
  day = '2027-01-02T09:00:00Z'
  expect((await draft(years, 'DALE', { 'P-100': 1 })).number).toBe('2027-0001')
  years.close()
})

test('a sheet without a stop is checked and sent; who did what and when stands with it', async () => {
  const { number } = await draft(shop, 'DALE', { 'P-100': 6 })
  const checked = await shop.answer('order-sheets.check-sheet', { number, initials: 'cd' })
  expect(checked.checked.stops).toBe(0)
  expect(checked.sheet.state).toBe('checked')
  const { sheet } = await shop.answer('order-sheets.send-sheet', { number, initials: 'ef' })
  expect(sheet).toMatchObject({ state: 'sent', sentBy: 'EF', sentAt: '2026-11-23T09:00:00.000Z' })
  expect(sheet.events.map(({ what, initials }) => `${what} ${initials}`)).toEqual([
    'drafted AB',
    'checked CD',
    'sent EF',
  ])
})

test('a stop keeps a sheet a draft until it is let pass, and that stays with the line', async () => {
  const line = { part: 'P-101', quantity: 1, brand: 'Quorvane', modelNumber: 'QV-1042/B' }
  const { sheets } = await shop.answer('order-sheets.draft-sheets', {
    sheets: [{ supplier: 'HOLM', lines: [line] }],
  })
  const number = sheets[0]?.number ?? ''
  const first = await shop.answer('order-sheets.check-sheet', { number })
  expect(first.sheet.state).toBe('draft')
  expect(first.checked).toMatchObject({ stops: 1, lines: [{ line: 1, verdict: 'does-not-fit' }] })
  expect(await shop.ask('order-sheets.send-sheet', { number })).toEqual({
    ok: false,
    problem: { code: 'sheet-state-forbids', number, state: 'draft', act: 'send', allowed: ['checked'] },
  })
  await shop.answer('order-check.override-stop', {
    line: { line: 1, partNumber: 'P-101', quantity: 1, brand: 'Quorvane', modelNumber: 'QV-1042/B' },
    supplier: 'HOLM',
    code: 'does-not-fit',
    reason: 'for the bench',
    initials: 'gh',
  })
  const second = await shop.answer('order-sheets.check-sheet', { number })
  expect(second.sheet.state).toBe('checked')
  expect(second.sheet.lines[0]?.overrides).toEqual([
    { code: 'does-not-fit', reason: 'for the bench', initials: 'GH', recordedAt: '2026-11-23T09:00:00.000Z' },
  ])
  const { sheet } = await shop.answer('order-sheets.reopen-sheet', { number })
  expect(sheet).toMatchObject({ state: 'draft', lines: [{ overrides: [] }] })
})

test('lines change in a draft only', async () => {
  const { number } = await draft(shop, 'DALE', { 'P-100': 6 })
  const change = () =>
    shop.ask('order-sheets.change-lines', {
      number,
      lines: [{ part: 'S-2', quantity: 3, unitPrice: '2.40' }],
    })
  expect(await change()).toMatchObject({
    ok: true,
    value: { sheet: { net: '7.20', lines: [{ partNumber: 'S-2', unitPrice: '2.40' }] } },
  })
  await shop.answer('order-sheets.check-sheet', { number })
  expect(await change()).toEqual({
    ok: false,
    problem: { code: 'sheet-state-forbids', number, state: 'checked', act: 'change', allowed: ['draft'] },
  })
})

test('a part that the catalogue does not have and a sheet that never was are refused', async () => {
  expect(
    await shop.ask('order-sheets.draft-sheets', {
      sheets: [{ supplier: 'DALE', lines: [{ part: 'P-199', quantity: 1, unitPrice: '1' }] }],
    }),
  ).toMatchObject({ ok: false, problem: { code: 'part-not-found', typed: 'P-199' } })
  expect(await shop.ask('order-sheets.read-sheet', { number: '2026-0042' })).toEqual({
    ok: false,
    problem: { code: 'sheet-not-found', number: '2026-0042' },
  })
})

test('what was sent is on order; what is drafted, checked or cancelled is not', async () => {
  const onOrder = async (part?: string) =>
    (await shop.answer('order-sheets.list-on-order', part === undefined ? {} : { part })).rows
  const { number } = await draft(shop, 'DALE', { 'P-100': 6 })
  await shop.answer('order-sheets.check-sheet', { number })
  expect(await onOrder()).toEqual([])
  await send(shop, 'HOLM', { 'P-101': 2 })
  await shop.answer('order-sheets.send-sheet', { number })
  expect(await onOrder('XR-100')).toEqual([
    { partNumber: 'P-100', number, supplier: 'DALE', quantity: 6, sentAt: '2026-11-23T09:00:00.000Z' },
  ])
  expect((await onOrder()).map(({ partNumber }) => partNumber)).toEqual(['P-100', 'P-101'])
  await shop.answer('order-sheets.cancel-sheet', { number, reason: 'supplier has none' })
  expect((await onOrder()).map(({ partNumber }) => partNumber)).toEqual(['P-101'])
})

test('the order check tells that a part is on an open order, by any number of it', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  const { lines } = await shop.answer('order-check.check-order', {
    lines: [{ line: 1, partNumber: 'XR-100', quantity: 10 }],
  })
  expect(lines[0]?.flags.find(({ code }) => code === 'on-open-order')).toEqual({
    code: 'on-open-order',
    severity: 'caution',
    text: `On order already: 6 on ${number} from DALE. Order more only if both are wanted.`,
  })
})

test('the sheets of a state and of a supplier are listed', async () => {
  const sent = await send(shop, 'DALE', { 'P-100': 6 })
  await draft(shop, 'HOLM', { 'P-101': 1 })
  const list = async (asked: Parameters<typeof shop.answer<'order-sheets.list-sheets'>>[1]) =>
    (await shop.answer('order-sheets.list-sheets', asked)).sheets.map(({ number }) => number)
  expect(await list({ states: ['sent', 'part-received'] })).toEqual([sent.number])
  expect(await list({ states: ['received', 'cancelled'] })).toEqual([])
  expect(await list({ supplier: 'holm' })).toEqual(['2026-0002'])
})
