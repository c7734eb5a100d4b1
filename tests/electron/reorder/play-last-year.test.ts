import { afterEach, expect, test } from 'vitest'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

let shop: TestShop
afterEach(() => shop.close())

/** So many pieces of two parts every other week, over so many weeks up to the day on which the shop is open. */
const usage = (weeks: number, pieces = 2) => {
  const rows = Array.from({ length: Math.ceil(weeks / 2) }, (_, at) => {
    const date = new Date(Date.UTC(2026, 10, 22 - 14 * at)).toISOString().slice(0, 10)
    return `${date},shop,1E5,${pieces},\n${date},shop,0048-0122,1,`
  })
  return ['date,location,part_number,quantity,job', ...rows, ''].join('\n')
}

test('a higher aim gives more and needs more, and the setting is one of the curve', async () => {
  shop = await openTestShop({ ...smallCatalogue, 'usage.csv': usage(150) })
  const steps: number[] = []
  const { buckets, bucket, parts, setting, curve } = await shop.answer(
    'reorder.play-last-year',
    { fillRate: 0.9 },
    { report: ({ done }) => steps.push(done) },
  )
  expect([buckets, bucket, parts]).toEqual([52, 'week', 2])
  expect(curve).toContainEqual(setting)
  for (const [at, point] of curve.entries()) {
    const before = curve[at - 1]
    expect(point.fillRate).toBeGreaterThanOrEqual(before?.fillRate ?? 0)
    expect(point.stockPieces).toBeGreaterThanOrEqual(before?.stockPieces ?? 0)
  }
  expect(steps.length).toBeGreaterThan(10)
})

test('present levels are played on the parts that have one, beside ours on the same parts', async () => {
  shop = await openTestShop({ ...smallCatalogue, 'usage.csv': usage(150) })
  const { present } = await shop.answer('reorder.play-last-year', {
    leadDays: 7,
    present: [{ part: '1E5', minimum: 0, maximum: 1 }],
  })
  // One is kept and two are asked for, 26 times: half of them are there.
  expect(present).toMatchObject({ from: 'given', parts: 1 })
  expect(present?.theirs).toMatchObject({ targetFillRate: null, fillRate: 0.5 })
  expect(present?.ours.fillRate).toBeGreaterThan(0.9)
})

test('without minimum and maximum, the vans’ lists are what is kept', async () => {
  shop = await openTestShop({ ...smallCatalogue, 'usage.csv': usage(150) })
  const { present } = await shop.answer('reorder.play-last-year', {})
  expect(present).toMatchObject({ from: 'lists', parts: 1, theirs: { fillRate: 1 } })
})

test('a history of a few weeks is too short to play', async () => {
  shop = await openTestShop({ ...smallCatalogue, 'usage.csv': usage(10) })
  const { buckets, setting, curve } = await shop.answer('reorder.play-last-year', {})
  expect([buckets, setting, curve]).toEqual([0, null, []])
})

test('a year that was played does not know what came after it', async () => {
  shop = await openTestShop({ ...smallCatalogue, 'usage.csv': usage(150) })
  const early = { asOf: '2026-06-30' } as const
  const before = await shop.answer('reorder.play-last-year', early)
  await shop.load({
    'usage.csv': 'date,location,part_number,quantity,job\n2026-07-01,shop,1E5,50,J7\n',
  })
  expect(await shop.answer('reorder.play-last-year', early)).toEqual(before)
})
