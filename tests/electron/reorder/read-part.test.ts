import { afterEach, expect, test } from 'vitest'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { reorderShop } from '../../builders/reorder-shop.ts'

let shop: TestShop
afterEach(() => shop.close())

const usage = (...rows: readonly string[]) => ({
  ...reorderShop,
  'usage.csv': ['date,location,part_number,quantity,job', ...rows, ''].join('\n'),
})
const usesOf = async (part: string) => (await shop.answer('reorder.read-part', { part })).uses

test('what jobs and customers took in the last year is told by day, the latest first', async () => {
  shop = await openTestShop(
    usage(
      '2025-11-20,SHOP,B-101,9,J-1',
      '2026-10-02,SHOP,B-101,2,J-2',
      '2026-10-02,VAN1,B-101,1,J-2',
      '2026-10-02,SHOP,B-200,5,J-2',
      '2026-10-09,SHOP,B-101,1,',
      '2026-10-12,SHOP,B-101,-1,J-3',
    ),
  )
  expect(await usesOf('b101')).toEqual([
    { date: '2026-10-12', reference: 'J-3', quantity: -1, isOneOff: false },
    { date: '2026-10-09', reference: '', quantity: 1, isOneOff: false },
    { date: '2026-10-02', reference: 'J-2', quantity: 3, isOneOff: false },
  ])
})

test('what the ledger gave out is told with the job, and not once it is reversed', async () => {
  shop = await openTestShop(usage())
  const { movement } = await shop.answer('stock-ledger.record-movement', {
    ...{ part: 'B-101', quantity: 3, from: 'SHOP', to: 'job', reference: 'J-7', reason: 'fitted' },
  })
  await shop.answer('stock-ledger.record-movement', {
    ...{ part: 'B-101', quantity: 1, from: 'SHOP', to: 'scrap', reason: 'torn' },
  })
  expect(await usesOf('B-101')).toMatchObject([{ reference: 'J-7', quantity: 3 }])
  await shop.answer('stock-ledger.reverse-movement', {
    movementId: movement.movementId,
    reason: 'wrong job',
  })
  expect(await usesOf('B-101')).toEqual([])
})

test('a one-off job is told as one for every day it took the part, until the mark is taken back', async () => {
  shop = await openTestShop(usage('2026-10-02,SHOP,B-101,2,J-2', '2026-10-03,SHOP,B-101,1,J-2'))
  await shop.answer('reorder.mark-one-off', { reference: 'J-2' })
  expect((await usesOf('B-101')).map(({ isOneOff }) => isOneOff)).toEqual([true, true])
  await shop.answer('reorder.mark-one-off', { reference: 'J-2', isOneOff: false })
  expect((await usesOf('B-101')).map(({ isOneOff }) => isOneOff)).toEqual([false, false])
})

test('the shelf limit and the preferred supplier are told as they were said, and as nothing when taken back', async () => {
  shop = await openTestShop(reorderShop)
  const said = async () => {
    const { shelfLimit, preferredSupplier } = await shop.answer('reorder.read-part', { part: 'B-100' })
    return [shelfLimit, preferredSupplier]
  }
  expect(await said()).toEqual([null, null])
  await shop.answer('reorder.set-shelf-limit', { part: 'B-100', pieces: 0 })
  await shop.answer('proposal.prefer-supplier', { part: 'B-100', supplier: 'HOLM' })
  expect(await said()).toEqual([0, 'HOLM'])
  await shop.answer('reorder.set-shelf-limit', { part: 'B-100', pieces: null })
  await shop.answer('proposal.prefer-supplier', { part: 'B-100', supplier: null })
  expect(await said()).toEqual([null, null])
})

test('the latest two hundred are told, and how many there were before them', async () => {
  const days = Array.from({ length: 205 }, (_, back) =>
    new Date(Date.UTC(2026, 10, 20 - back)).toISOString().slice(0, 10),
  )
  shop = await openTestShop(usage(...days.map(date => `${date},SHOP,B-101,1,`)))
  const { uses, earlierUses } = await shop.answer('reorder.read-part', { part: 'B-101' })
  expect([uses.length, uses[0]?.date, earlierUses]).toEqual([200, '2026-11-20', 5])
})

test('a number that no part has is refused', async () => {
  shop = await openTestShop(reorderShop)
  const reply = await shop.ask('reorder.read-part', { part: 'ZZ-9' })
  expect(reply).toMatchObject({ ok: false, problem: { code: 'part-not-found', typed: 'ZZ-9' } })
})
