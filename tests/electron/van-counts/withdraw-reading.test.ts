import { afterEach, beforeEach, expect, test } from 'vitest'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'

let shop: TestShop
let countId: string
beforeEach(async () => {
  shop = await openTestShop({
    'families.csv': 'family,name\nvalve,Valve\n',
    'parts.csv': 'part_number,family,kind\n480121,valve,genuine\n480130,valve,pattern\n',
    'locations.csv': 'location,kind,name\nvan-1,van,Van 1\n',
    'opening_stock.csv': 'location,part_number,quantity,bin\nvan-1,480121,3,A1\nvan-1,480130,2,A2\n',
  })
  countId = (await shop.answer('van-counts.begin-count', { location: 'van-1' })).countId
})
afterEach(() => shop.close())

const scan = (part = '480121') =>
  shop.answer('van-counts.record-reading', { countId, part, pieces: 1, how: 'add' })
const withdraw = (readingId: string) => shop.ask('van-counts.withdraw-reading', { countId, readingId })
const line = async () =>
  (await shop.answer('van-counts.read-count', { countId, compare: true })).lines.find(
    ({ partNumber }) => partNumber === '480121',
  )

test('a wrong scan is taken back, and what was scanned before counts again', async () => {
  await scan()
  const { readingId } = await scan()
  expect(await withdraw(readingId)).toEqual({ ok: true, value: { partNumber: '480121', counted: 1 } })
  expect(await line()).toMatchObject({ counted: 1 })
})

test('a part whose only scan was taken back is not counted: it is no loss', async () => {
  const { readingId } = await scan()
  expect(await withdraw(readingId)).toMatchObject({ value: { counted: null } })
  expect(await line()).toMatchObject({ counted: null, variance: null })
  await scan('480130')
  await shop.answer('van-counts.post-count', { countId })
  const { rows } = await shop.answer('stock-ledger.list-on-hand', { location: 'van-1', part: '480121' })
  expect(rows).toMatchObject([{ quantity: 3 }])
})

test('only the last reading of a part is taken back, and once', async () => {
  const first = await scan()
  const second = await scan()
  const refused = { ok: false, problem: { code: 'reading-not-last' } }
  expect(await withdraw(first.readingId)).toMatchObject(refused)
  await withdraw(second.readingId)
  expect(await withdraw(second.readingId)).toMatchObject(refused)
  expect(await withdraw(first.readingId)).toMatchObject({ ok: true })
})

test('pieces scanned one by one are counted once, and so a line that is off is still counted again', async () => {
  await scan()
  await scan()
  expect(await line()).toMatchObject({ readings: 1, toRecount: true })
  await shop.answer('van-counts.record-reading', { countId, part: '480121', pieces: 2 })
  expect(await line()).toMatchObject({ readings: 2, toRecount: false })
})
