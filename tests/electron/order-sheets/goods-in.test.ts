import { afterEach, beforeEach, expect, test } from 'vitest'
import type { GivenInput } from '../../../shared-schemas/index.ts'
import type { TestShop } from '../../builders/open-test-shop.ts'
import { openSheetShop, send } from './sheet-shop.ts'

let shop: TestShop
let day = ''
beforeEach(async () => {
  day = '2026-11-23T09:00:00Z'
  shop = await openSheetShop({ now: () => new Date(day) })
})
afterEach(() => shop.close())

type Arrivals = GivenInput<'goods-in.receive-goods'>['arrivals']

const receive = (number: string, arrivals: Arrivals, more: { deliveryNote?: string } = {}) =>
  shop.answer('goods-in.receive-goods', { number, arrivals, initials: 'ab', ...more })

async function bookOf(part: string): Promise<Record<string, number>> {
  const { rows } = await shop.answer('stock-ledger.list-on-hand', { part })
  return Object.fromEntries(rows.map(({ location, quantity }) => [location, quantity]))
}

async function dueOf(part: string): Promise<number> {
  const { rows } = await shop.answer('order-sheets.list-on-order', { part })
  return rows.reduce((sum, { quantity }) => sum + quantity, 0)
}

test('a whole delivery is in the book at the price of its lines, and the sheet is received', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6, 'S-2': 3 })
  const { sheet } = await receive(
    number,
    [
      { line: 1, quantity: 6 },
      { line: 2, quantity: 3, unitPrice: '2.40' },
    ],
    { deliveryNote: '4711' },
  )
  expect(sheet.state).toBe('received')
  expect(sheet.lines.map(({ received, toCome }) => [received, toCome])).toEqual([
    [6, 0],
    [3, 0],
  ])
  expect(await bookOf('P-100')).toEqual({ SHOP: 9, VAN1: 1 })
  const { movements } = await shop.answer('stock-ledger.list-movements', { part: 'P-100', most: 1 })
  expect(movements[0]).toMatchObject({
    ...{ kind: 'receipt', from: 'supplier', to: 'SHOP', quantity: 6, initials: 'ab' },
    ...{ reason: 'delivery, note 4711', reference: number, unitCost: '10.005' },
  })
  const { deliveries } = await shop.answer('goods-in.read-deliveries', { number })
  expect(deliveries).toMatchObject([
    {
      deliveryNote: '4711',
      initials: 'AB',
      lines: [
        { line: 1, partNumber: 'P-100', quantity: 6, condition: 'good', to: 'SHOP', unitCost: '10.005' },
        { line: 2, partNumber: 'S-2', quantity: 3, unitCost: '2.40' },
      ],
    },
  ])
})

test('what comes short stays on order, and the order check and the shelves know how many', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  const { sheet } = await receive(number, [{ line: 1, quantity: 4 }])
  expect(sheet).toMatchObject({ state: 'part-received', lines: [{ received: 4, toCome: 2 }] })
  expect(await dueOf('P-100')).toBe(2)
  const { lines } = await shop.answer('order-check.check-order', {
    lines: [{ line: 1, partNumber: 'P-100' }],
  })
  expect(lines[0]?.flags.find(({ code }) => code === 'on-open-order')?.text).toMatch(
    /^On order already: 2 on /,
  )
  const { sheets } = await shop.answer('order-sheets.list-sheets', { states: ['part-received'] })
  expect(sheets).toMatchObject([{ number, toCome: 2 }])
})

test('more than was ordered is taken in, and nothing is due', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  const { sheet } = await receive(number, [{ line: 1, quantity: 8 }])
  expect(sheet).toMatchObject({ state: 'received', lines: [{ quantity: 6, received: 8, toCome: 0 }] })
  expect(await dueOf('P-100')).toBe(0)
})

test('damaged pieces are in quarantine and stay due', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  const { sheet } = await receive(number, [
    { line: 1, quantity: 5 },
    { line: 1, quantity: 1, condition: 'damaged' },
  ])
  expect(sheet).toMatchObject({ state: 'part-received', lines: [{ received: 5, damaged: 1, toCome: 1 }] })
  expect(await bookOf('P-100')).toEqual({ SHOP: 8, VAN1: 1, BAD: 1 })
})

test('a remainder that will not come is closed with a reason, and may be expected again', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  await receive(number, [{ line: 1, quantity: 4 }])
  const closed = await shop.answer('goods-in.close-line', {
    number,
    line: 1,
    reason: 'discontinued',
    initials: 'cd',
  })
  expect(closed.sheet).toMatchObject({ state: 'received', lines: [{ closed: 2, toCome: 0 }] })
  expect(await dueOf('P-100')).toBe(0)
  expect(await shop.ask('goods-in.close-line', { number, line: 1, reason: 'again' })).toEqual({
    ok: false,
    problem: { code: 'nothing-due', number, line: 1, way: 'close' },
  })
  const again = await shop.answer('goods-in.expect-again', { number, line: 1, reason: 'they found two' })
  expect(again.sheet).toMatchObject({ state: 'part-received', lines: [{ closed: 0, toCome: 2 }] })
  const { closings } = await shop.answer('goods-in.read-deliveries', { number })
  expect(closings.map(({ pieces, reason, initials }) => [pieces, reason, initials])).toEqual([
    [2, 'discontinued', 'CD'],
    [-2, 'they found two', ''],
  ])
})

test('a sheet of which everything was closed before anything came is cancelled', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  const { sheet } = await shop.answer('goods-in.close-line', { number, line: 1, reason: 'out of stock' })
  expect(sheet.state).toBe('cancelled')
  const again = await shop.answer('goods-in.expect-again', { number, line: 1, reason: 'in stock after all' })
  expect(again.sheet.state).toBe('sent')
})

test('a delivery is taken back whole, and its pieces are due again', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6, 'S-2': 3 })
  const { receiptId } = await receive(number, [
    { line: 1, quantity: 6 },
    { line: 2, quantity: 3 },
  ])
  const { sheet } = await shop.answer('goods-in.take-back-delivery', { receiptId, reason: 'the other van’s' })
  expect(sheet).toMatchObject({ state: 'sent', lines: [{ toCome: 6 }, { toCome: 3 }] })
  expect(await bookOf('P-100')).toEqual({ SHOP: 3, VAN1: 1 })
  expect(await shop.ask('goods-in.take-back-delivery', { receiptId, reason: 'twice' })).toEqual({
    ok: false,
    problem: { code: 'delivery-taken-back-already', number },
  })
  const { deliveries } = await shop.answer('goods-in.read-deliveries', { number })
  expect(deliveries[0]?.lines.map(({ isTakenBack }) => isTakenBack)).toEqual([true, true])
})

test('one movement of a delivery that is taken back in the ledger makes its pieces due again', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  await receive(number, [{ line: 1, quantity: 6 }])
  const { movements } = await shop.answer('stock-ledger.list-movements', { part: 'P-100', most: 1 })
  await shop.answer('stock-ledger.reverse-movement', {
    movementId: movements[0]?.movementId ?? '',
    reason: 'miscounted',
  })
  const { sheet } = await shop.answer('order-sheets.read-sheet', { number })
  expect(sheet).toMatchObject({ state: 'sent', lines: [{ received: 0, toCome: 6 }] })
})

test('a delivery of which one line is refused is not in the book at all', async () => {
  const { number } = await send(shop, 'DALE', { 'P-100': 6 })
  const reply = await shop.ask('goods-in.receive-goods', {
    number,
    arrivals: [
      { line: 1, quantity: 6 },
      { line: 2, quantity: 1 },
    ],
  })
  expect(reply).toEqual({ ok: false, problem: { code: 'line-not-on-sheet', number, line: 2 } })
  expect(await bookOf('P-100')).toEqual({ SHOP: 3, VAN1: 1 })
  expect(await dueOf('P-100')).toBe(6)
})

test('nothing is received against a sheet that was not sent', async () => {
  const { sheets } = await shop.answer('order-sheets.draft-sheets', {
    sheets: [{ supplier: 'DALE', lines: [{ part: 'P-100', quantity: 1 }] }],
  })
  const number = sheets[0]?.number ?? ''
  expect(
    await shop.ask('goods-in.receive-goods', { number, arrivals: [{ line: 1, quantity: 1 }] }),
  ).toMatchObject({
    ok: false,
    problem: { code: 'sheet-state-forbids', state: 'draft', act: 'receive' },
  })
})

test('prices in a currency that the book is not kept in are no costs of it', async () => {
  await shop.load({ 'offers.csv': 'supplier,part_number,price\nVELD,P-100,9.00\n' })
  const { number } = await send(shop, 'VELD', { 'P-100': 2 })
  await receive(number, [
    { line: 1, quantity: 1 },
    { line: 1, quantity: 1, unitPrice: '7.80' },
  ])
  const { deliveries } = await shop.answer('goods-in.read-deliveries', { number })
  expect(deliveries[0]?.lines.map(({ unitCost }) => unitCost).sort()).toEqual(['7.80', null])
})

/** A sheet of one line for an appliance, sent. */
async function sendFor(part: string, supplier: string, modelNumber: string) {
  const { sheets } = await shop.answer('order-sheets.draft-sheets', {
    sheets: [{ supplier, lines: [{ part, quantity: 1, unitPrice: '9', brand: 'Quorvane', modelNumber }] }],
  })
  const number = sheets[0]?.number ?? ''
  await shop.answer('order-sheets.check-sheet', { number })
  await shop.answer('order-sheets.send-sheet', { number })
  return number
}

test('a substitute that fits the line’s appliance is proved by the fit check, and received for the line', async () => {
  const number = await sendFor('P-100', 'DALE', 'QV-1042/A')
  const judged = await shop.answer('goods-in.judge-substitute', { number, line: 1, part: 'P-101' })
  expect(judged).toMatchObject({
    ...{ partNumber: 'P-101', ordered: 'P-100', verdict: 'fits', isProved: true },
    text: 'It fits the appliance of this line.',
  })
  const { sheet } = await receive(number, [{ line: 1, part: 'P-101', quantity: 1, unitPrice: '6.00' }])
  expect(sheet).toMatchObject({ state: 'received', lines: [{ partNumber: 'P-100', received: 1 }] })
  expect(await bookOf('P-101')).toEqual({ SHOP: 1 })
})

test('what fits the machine but does other work is no substitute', async () => {
  const number = await sendFor('P-100', 'DALE', 'QV-1042/A')
  const judged = await shop.answer('goods-in.judge-substitute', { number, line: 1, part: 'H-1' })
  expect(judged).toMatchObject({
    ...{ verdict: 'fits', isProved: false, text: 'It is another kind of part than P-100.' },
  })
})

test('a substitute that does not fit is refused with why, until somebody says why it is taken', async () => {
  const number = await sendFor('P-100', 'DALE', 'QV-1042/A')
  const arrival = { line: 1, part: 'P-150', quantity: 1 }
  expect(await shop.ask('goods-in.receive-goods', { number, arrivals: [arrival] })).toMatchObject({
    ok: false,
    problem: {
      ...{ code: 'substitute-not-proved', part: 'P-150', ordered: 'P-100' },
      why: expect.stringMatching(/Nothing on record says that it fits Quorvane QV-1042\/A/),
    },
  })
  expect(await bookOf('P-150')).toEqual({})
  const { sheet } = await receive(number, [{ ...arrival, takenBecause: 'for the bench' }])
  expect(sheet.state).toBe('received')
  const { movements } = await shop.answer('stock-ledger.list-movements', { part: 'P-150', most: 1 })
  expect(movements[0]?.reason).toBe('delivery, in place of P-100: for the bench')
})

test.each([
  ['what replaced it one way', 'S-1', 'S-2', true, /stands for S-1 in every appliance/],
  ['the other of two that stand for each other', 'B-2', 'B-1', true, /stands for B-2/],
  ['the older number, which nothing says may stand for the newer', 'S-2', 'S-1', false, /same family/],
  ['what replaces it only in some appliances', 'P-150', 'P-160', false, /same family/],
  ['another kind of part', 'P-100', 'H-1', false, /another kind of part/],
  ['the same part by another of its numbers', 'P-100', 'XR-100', true, /what was ordered/],
])('for the shelf: %s', async (_title, ordered, came, isProved, text) => {
  const { sheets } = await shop.answer('order-sheets.draft-sheets', {
    sheets: [{ supplier: 'HOLM', lines: [{ part: ordered, quantity: 10, unitPrice: '6' }] }],
  })
  const judged = await shop.answer('goods-in.judge-substitute', {
    ...{ number: sheets[0]?.number ?? '', line: 1, part: came },
  })
  expect(judged).toMatchObject({ isProved, text: expect.stringMatching(text) })
})

test('a safety device that replaced another and needs an adapter says so', async () => {
  const { sheets } = await shop.answer('order-sheets.draft-sheets', {
    sheets: [{ supplier: 'DALE', lines: [{ part: 'L-200', quantity: 1, unitPrice: '6' }] }],
  })
  const judged = await shop.answer('goods-in.judge-substitute', {
    ...{ number: sheets[0]?.number ?? '', line: 1, part: 'L-201' },
  })
  expect(judged).toMatchObject({ isProved: true, cautions: ['Whoever fits it also needs K-9.'] })
})

test('deliveries are listed as they came, and one that was taken back leaves nothing in the book', async () => {
  const first = await send(shop, 'DALE', { 'P-100': 6, 'S-2': 3 })
  const other = await send(shop, 'HOLM', { 'P-101': 2 })
  day = '2026-11-26T16:00:00Z'
  await receive(first.number, [
    { line: 1, quantity: 4 },
    { line: 2, quantity: 3 },
  ])
  day = '2026-12-01T08:00:00Z'
  await receive(first.number, [{ line: 1, quantity: 2 }])
  const { receiptId } = await receive(other.number, [{ line: 1, quantity: 2 }])
  await shop.answer('goods-in.take-back-delivery', { receiptId, reason: 'not ours' })
  const { rows } = await shop.answer('stock-ledger.list-on-hand', { part: 'P-101' })
  expect(rows.map(({ quantity }) => quantity).filter(Boolean)).toEqual([])
  const { deliveries } = await shop.answer('goods-in.read-deliveries', { number: first.number })
  expect(deliveries.map(({ recordedAt }) => recordedAt.slice(0, 10))).toEqual(['2026-11-26', '2026-12-01'])
})
