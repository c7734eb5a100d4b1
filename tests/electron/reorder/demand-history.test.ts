import { afterEach, expect, test } from 'vitest'
import type { GivenInput } from '../../../shared-schemas/index.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

let shop: TestShop
afterEach(() => shop.close())

const asOf = '2026-11-23'
const used = (rows: readonly string[]) => ({
  ...smallCatalogue,
  'opening_stock.csv': 'location,part_number,quantity,bin\nshop,1E5,90,\n',
  'usage.csv': ['date,location,part_number,quantity,job', ...rows, ''].join('\n'),
})

/** Two years of a piece every other week. */
const steady = Array.from({ length: 52 }, (_, at) => {
  const date = new Date(Date.UTC(2026, 10, 20 - 14 * at)).toISOString().slice(0, 10)
  return `${date},shop,1E5,1,J${at}`
})

async function meanOf(part = '1E5'): Promise<number> {
  const { rows } = await shop.answer('reorder.list-levels', { asOf, bucket: 'week' })
  return rows.find(({ partNumber }) => partNumber === part)?.meanPerBucket ?? Number.NaN
}

async function move(input: Partial<GivenInput<'stock-ledger.record-movement'>>) {
  const { movement } = await shop.answer('stock-ledger.record-movement', {
    ...{ part: '1E5', quantity: 1, from: 'shop', to: 'job', reference: 'J900', reason: 'fitted' },
    ...input,
  })
  return movement.movementId
}

test('what a job took counts, and not when it is taken back', async () => {
  shop = await openTestShop(used(steady))
  const before = await meanOf()
  const movementId = await move({ quantity: 8 })
  expect(await meanOf()).toBeGreaterThan(before)
  await shop.answer('stock-ledger.reverse-movement', { movementId, reason: 'wrong job' })
  expect(await meanOf()).toBe(before)
})

test('what a customer brings back was not asked for', async () => {
  shop = await openTestShop(used(steady))
  const before = await meanOf()
  await move({ quantity: 8, to: 'customer', reference: 'counter' })
  await move({ quantity: 8, from: 'customer', to: 'shop', reference: 'counter', reason: 'unused' })
  expect(await meanOf()).toBe(before)
})

test('moving pieces about and losing them is no demand', async () => {
  shop = await openTestShop(used(steady))
  const before = await meanOf()
  await shop.answer('stock-ledger.record-movement', {
    ...{ part: '1E5', quantity: 5, from: 'shop', to: 'van-1', reason: 'top-up' },
  })
  await shop.answer('stock-ledger.record-movement', {
    ...{ part: '1E5', quantity: 5, from: 'van-1', to: 'scrap', reason: 'crushed' },
  })
  expect(await meanOf()).toBe(before)
})

test('a one-off job is left out until the mark is taken back', async () => {
  shop = await openTestShop(used([...steady, '2026-11-19,shop,1E5,40,J999']))
  const withIt = await meanOf()
  const marked = await shop.answer('reorder.mark-one-off', { reference: 'J999' })
  expect(marked).toEqual({ reference: 'J999', isOneOff: true, pieces: 40 })
  const without = await meanOf()
  expect(without).toBeLessThan(withIt / 2)
  await shop.answer('reorder.mark-one-off', { reference: 'J999', isOneOff: false })
  expect(await meanOf()).toBe(withIt)
})

test('a reference under which nothing went out is told', async () => {
  shop = await openTestShop(used(steady))
  const reply = await shop.ask('reorder.mark-one-off', { reference: 'J9999' })
  expect(reply).toEqual({ ok: false, problem: { code: 'nothing-used-for', reference: 'J9999' } })
})

test('a shelf that holds two gets no more, and settings stand until they are changed', async () => {
  shop = await openTestShop(used(steady))
  const settings = await shop.answer('reorder.change-settings', { fillRate: 0.99, leadDays: 30 })
  expect(settings).toEqual({ fillRate: 0.99, reviewDays: 7, leadDays: 30, lineCost: null, holdingRate: 0.25 })
  expect(await shop.answer('reorder.read-settings', {})).toEqual(settings)
  const levelOf = async () => {
    const { rows, targetFillRate } = await shop.answer('reorder.list-levels', { asOf })
    return [targetFillRate, rows.find(({ partNumber }) => partNumber === '1E5')?.orderUpTo]
  }
  const [target, free = 0] = await levelOf()
  expect(target).toBe(0.99)
  expect(free).toBeGreaterThan(2)
  await shop.answer('reorder.set-shelf-limit', { part: '1E5', pieces: 2 })
  expect(await levelOf()).toEqual([0.99, 2])
  await shop.answer('reorder.set-shelf-limit', { part: '1E5', pieces: null })
  expect(await levelOf()).toEqual([0.99, free])
})

test('nothing that happens after a day changes what is answered as of that day', async () => {
  shop = await openTestShop(used(steady))
  const early = { asOf: '2026-08-03' } as const
  const before = await shop.answer('reorder.list-levels', early)
  await shop.load({
    'usage.csv': `date,location,part_number,quantity,job
2026-08-04,shop,1E5,30,J501
2026-09-01,van-1,PX 7,4,J502
2026-10-01,shop,1E5,-1,J503
`,
  })
  await move({ quantity: 8 })
  expect(await shop.answer('reorder.list-levels', early)).toEqual(before)
})
