import { afterEach, expect, test } from 'vitest'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

let shop: TestShop
afterEach(() => shop.close())

test('a part that nobody ever asked for has levels of nothing, and is listed all the same', async () => {
  shop = await openTestShop({ ...smallCatalogue, 'usage.csv': 'date,location,part_number,quantity,job\n' })
  const { rows } = await shop.answer('reorder.list-levels', {})
  expect(rows.map(({ partNumber, life, orderUpTo }) => [partNumber, life, orderUpTo])).toEqual([
    ['0048-0121', 'replaced', 0],
    ['0048-0122', 'unused', 0],
    ['0048-0123', 'unused', 0],
    ['1E5', 'unused', 0],
    ['PX 7', 'unused', 0],
  ])
})

test('the history of a replaced number counts for the number that replaced it', async () => {
  shop = await openTestShop({ ...smallCatalogue, 'usage.csv': monthlyUsage('0048-0121', 24, 3) })
  const { rows, bucket } = await shop.answer('reorder.list-levels', { asOf: '2026-10-31' })
  const [old, successor] = rows
  expect(bucket).toBe('month')
  expect(old).toMatchObject({ replacedBy: '0048-0122', meanPerBucket: 0, orderUpTo: 0 })
  expect(successor?.meanPerBucket).toBeGreaterThan(2)
  expect(successor?.orderUpTo).toBeGreaterThanOrEqual(3)
})

test('lead time and review that are given are taken in place of the supplier’s and of the settings', async () => {
  shop = await openTestShop({ ...smallCatalogue, 'usage.csv': monthlyUsage('1E5', 24, 3) })
  const levelWith = async (days: { leadDays: number; reviewDays: number }) => {
    const { rows } = await shop.answer('reorder.list-levels', { asOf: '2026-10-31', ...days })
    return rows.find(({ partNumber }) => partNumber === '1E5')
  }
  const [near, far] = [
    await levelWith({ leadDays: 2, reviewDays: 7 }),
    await levelWith({ leadDays: 60, reviewDays: 30 }),
  ]
  expect([near?.leadDays, near?.leadTimeFrom]).toEqual([2, 'given'])
  expect(far?.orderUpTo).toBeGreaterThan(2 * (near?.orderUpTo ?? 0))
})

test('a cycle service of nine in ten is had on a slow part without any stock, and a fill rate is not', async () => {
  const everyTenWeeks = Array.from({ length: 11 }, (_, at) => {
    const date = new Date(Date.UTC(2026, 10, 20 - 70 * at)).toISOString().slice(0, 10)
    return `${date},shop,1E5,1,`
  })
  shop = await openTestShop({
    ...smallCatalogue,
    'usage.csv': ['date,location,part_number,quantity,job', ...everyTenWeeks, ''].join('\n'),
  })
  const levelAt = async (fillRate: number) => {
    const { rows } = await shop.answer('reorder.list-levels', { fillRate, leadDays: 0, reviewDays: 7 })
    return rows.find(({ partNumber }) => partNumber === '1E5')
  }
  const kept = await levelAt(0.9)
  expect(kept?.orderUpTo).toBeGreaterThanOrEqual(1)
  expect(kept?.expectedFillRate).toBeGreaterThanOrEqual(0.9)
  await shop.answer('reorder.set-shelf-limit', { part: '1E5', pieces: 0 })
  const without = await levelAt(0.9)
  expect(without).toMatchObject({ orderUpTo: 0, expectedFillRate: 0 })
  expect(without?.cycleService).toBeGreaterThan(0.9)
})

/** So many pieces on the first of each of the months up to October 2026. */
function monthlyUsage(part: string, months: number, pieces: number): string {
  const rows = Array.from({ length: months }, (_, at) => {
    const date = new Date(Date.UTC(2026, 9 - at, 1)).toISOString().slice(0, 10)
    return `${date},shop,${part},${pieces},`
  })
  return ['date,location,part_number,quantity,job', ...rows, ''].join('\n')
}
