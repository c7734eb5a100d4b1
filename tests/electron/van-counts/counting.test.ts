import { expect, test } from 'vitest'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'

const catalogue = {
  'brands.csv': 'brand\nOstrel\n',
  'models.csv': 'brand,model_number\nOstrel,OW 1\n',
  'families.csv': 'family,name\nvalve,Valve\nbelt,Belt\n',
  'parts.csv':
    'part_number,family,kind\n480121,valve,genuine\n480130,valve,pattern\n512200,belt,genuine\n512300,belt,genuine\n',
  'suppliers.csv': 'supplier,name,currency,lead_days\nDEALER,Dealer,GBP,2\n',
  'offers.csv': 'supplier,part_number,price\nDEALER,480121,10.00\nDEALER,480130,6.50\nDEALER,512200,3.00\n',
  'locations.csv': 'location,kind,name\nshop,shop,Shop\nvan-1,van,Van 1\n',
  'opening_stock.csv':
    'location,part_number,quantity,bin\nvan-1,480121,4,A1\nvan-1,480130,2,A2\nvan-1,512200,3,B1\nshop,480121,9,S1\n',
  'jobs.csv': 'job,date,van,brand,model_number,families_needed\nJ7,2026-11-20,van-1,Ostrel,OW 1,belt\n',
}

async function begin(): Promise<{
  shop: TestShop
  countId: string
  read(part: string, pieces: number): Promise<unknown>
}> {
  const shop = await openTestShop(catalogue)
  const { countId } = await shop.answer('van-counts.begin-count', { location: 'van-1', initials: 'AB' })
  const read = (part: string, pieces: number) =>
    shop.answer('van-counts.record-reading', { countId, part, pieces })
  return { shop, countId, read }
}

async function bookOf(shop: TestShop) {
  const { rows } = await shop.answer('stock-ledger.list-on-hand', { location: 'van-1' })
  return Object.fromEntries(rows.map(({ partNumber, quantity }) => [partNumber, quantity]))
}

test('a count is blind until it is compared', async () => {
  const { shop, countId, read } = await begin()
  await read('480121', 3)
  const { lines, recordAccuracy } = await shop.answer('van-counts.read-count', { countId })
  expect(
    lines.map(({ partNumber, bin, book, counted, variance }) => [partNumber, bin, book, counted, variance]),
  ).toEqual([
    ['480121', 'A1', null, 3, null],
    ['480130', 'A2', null, null, null],
    ['512200', 'B1', null, null, null],
  ])
  expect(recordAccuracy).toBeNull()
  shop.close()
})

test('a swap, a forgotten job line and a loss are told, booked as what they are, and leave the book as counted', async () => {
  const { shop, countId, read } = await begin()
  await read('480121', 3)
  await read('480130', 3)
  await read('512200', 2)
  await read('512300', 0)
  const { lines, recordAccuracy } = await shop.answer('van-counts.read-count', { countId, compare: true })
  expect(
    lines.map(({ partNumber, variance, proposed }) => [
      partNumber,
      variance,
      proposed.map(({ kind }) => kind),
    ]),
  ).toEqual([
    ['480121', -1, ['swap']],
    ['480130', 1, ['swap']],
    ['512200', -1, ['job-line']],
    ['512300', 0, []],
  ])
  expect(recordAccuracy).toBe(0.25)
  for (const { partNumber, proposed } of lines) {
    const [only] = proposed
    if (only !== undefined)
      await shop.answer('van-counts.explain-variance', {
        countId,
        part: partNumber,
        kind: only.kind,
        detail: only.detail,
      })
  }
  const posted = await shop.answer('van-counts.post-count', { countId, initials: 'AB' })
  expect(posted).toEqual({ movements: 3, recordAccuracy: 0.25, valueGained: '6.50', valueLost: '13.00' })
  expect(await bookOf(shop)).toEqual({ '480121': 3, '480130': 3, '512200': 2 })
  const { movements } = await shop.answer('stock-ledger.list-movements', { part: '512200', most: 1 })
  expect(movements[0]).toMatchObject({
    kind: 'issue',
    to: 'job',
    reference: 'J7',
    reason: 'fitted on job J7',
  })
  const { counts } = await shop.answer('van-counts.list-counts', {})
  expect(counts).toMatchObject([
    {
      countId,
      lines: 4,
      recordAccuracy: 0.25,
      valueGained: '6.50',
      reasons: [
        { kind: 'swap', lines: 2 },
        { kind: 'job-line', lines: 1 },
      ],
    },
  ])
  shop.close()
})

test('what is moved while the count goes on is no variance, and is still moved after it is posted', async () => {
  const { shop, countId, read } = await begin()
  await read('480121', 4)
  await shop.answer('stock-ledger.record-movement', {
    ...{ part: '480121', quantity: 1, from: 'van-1', to: 'job', reason: 'fitted', reference: 'J9' },
  })
  const { lines } = await shop.answer('van-counts.read-count', { countId, compare: true })
  expect(lines[0]).toMatchObject({ partNumber: '480121', book: 4, counted: 4, variance: 0 })
  await shop.answer('van-counts.post-count', { countId })
  expect((await bookOf(shop))['480121']).toBe(3)
  shop.close()
})

test('pieces scanned one by one add up, also when one is moved between two scans', async () => {
  const { shop, countId } = await begin()
  const scan = () =>
    shop.answer('van-counts.record-reading', { countId, part: '480121', pieces: 1, how: 'add' })
  await scan()
  await scan()
  await shop.answer('stock-ledger.record-movement', {
    ...{ part: '480121', quantity: 1, from: 'van-1', to: 'job', reason: 'fitted', reference: 'J9' },
  })
  await scan()
  expect(await scan()).toMatchObject({ partNumber: '480121', counted: 3 })
  const { lines } = await shop.answer('van-counts.read-count', { countId, compare: true })
  expect(lines[0]).toMatchObject({ book: 3, counted: 3, variance: 0 })
  shop.close()
})

test('a line outside its tolerance is to be read again, and its second reading stands', async () => {
  const { shop, countId, read } = await begin()
  await read('512200', 1)
  const first = await shop.answer('van-counts.read-count', { countId, compare: true })
  expect(first.lines.find(({ partNumber }) => partNumber === '512200')).toMatchObject({
    toRecount: true,
    variance: -2,
  })
  await read('512200', 3)
  const second = await shop.answer('van-counts.read-count', { countId, compare: true })
  expect(second.lines.find(({ partNumber }) => partNumber === '512200')).toMatchObject({
    ...{ toRecount: false, variance: 0, readings: 2, isWithin: true },
  })
  shop.close()
})

test('only one count of a place is open, and a posted one takes nothing more', async () => {
  const { shop, countId, read } = await begin()
  expect(await shop.answer('van-counts.begin-count', { location: 'van-1' })).toEqual({
    countId,
    isNew: false,
  })
  expect(await shop.ask('van-counts.post-count', { countId })).toMatchObject({
    problem: { code: 'nothing-counted' },
  })
  await read('512200', 3)
  await shop.answer('van-counts.post-count', { countId })
  const again = { countId, part: '512200', pieces: 1 }
  expect(await shop.ask('van-counts.record-reading', again)).toMatchObject({
    problem: { code: 'count-posted-already' },
  })
  expect(await shop.ask('van-counts.post-count', { countId })).toMatchObject({
    problem: { code: 'count-posted-already' },
  })
  expect((await shop.answer('van-counts.begin-count', { location: 'van-1' })).isNew).toBe(true)
  shop.close()
})

test('what a count booked is corrected by counting, and opening stock by loading', async () => {
  const { shop, countId, read } = await begin()
  await read('480121', 3)
  await shop.answer('van-counts.post-count', { countId })
  const { movements } = await shop.answer('stock-ledger.list-movements', {
    part: '480121',
    location: 'van-1',
  })
  for (const [at, outside] of (['count', 'opening'] as const).entries()) {
    const movementId = movements[at]?.movementId ?? ''
    const reply = await shop.ask('stock-ledger.reverse-movement', { movementId, reason: 'a slip' })
    expect(reply).toMatchObject({ ok: false, problem: { code: 'movement-stands', outside } })
  }
  shop.close()
})
