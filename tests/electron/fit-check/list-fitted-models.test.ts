import { afterAll, beforeAll, expect, test } from 'vitest'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

let shop: TestShop
beforeAll(async () => {
  shop = await openTestShop(smallCatalogue)
})
afterAll(() => shop.close())

const list = (part: string, asked: { words?: string; from?: number; most?: number } = {}) =>
  shop.answer('fit-check.list-fitted-models', { part, ...asked })

test('a part’s models stand by brand and number, each with its type and conditions', async () => {
  const { partNumber, count, models } = await list('00480123')
  expect(partNumber).toBe('0048-0123')
  expect(count).toBe(models.length)
  expect(models.map(({ brand, modelNumber, applianceType }) => [brand, modelNumber, applianceType])).toEqual([
    ['Ostrel', 'OW 4512/01', 'washer'],
    ['Ostrel', 'OW 4512/02', 'washer'],
    ['Ostrel', 'OW 4530/01', 'washer'],
  ])
  expect((await list('1E5')).models).toEqual([
    {
      brand: 'Brennick',
      modelNumber: '4821-07',
      applianceType: 'dryer',
      conditions: ['made 2010-01 to 2011-06', 'serial 100 to 2000', 'position left'],
    },
  ])
})

test('words narrow it, and a stretch of what is left is told', async () => {
  const page = await list('0048-0123', { words: '45 /01', from: 1, most: 1 })
  expect(page).toMatchObject({ count: 3, matching: 2, brands: [{ brand: 'Ostrel', models: 2 }] })
  expect(page.models.map(({ modelNumber }) => modelNumber)).toEqual(['OW 4530/01'])
})

test('a list that was asked for before holds what was loaded since', async () => {
  expect((await list('PX7')).count).toBe(3)
  const [header] = smallCatalogue['models.csv'].split('\n')
  await shop.load({ 'models.csv': `${header}\nOstrel,OW 4599/01,washer,,,,,,\n` })
  expect((await list('PX7')).models.map(({ modelNumber }) => modelNumber)).toContain('OW 4599/01')
})

test('a part that nobody has is refused with the nearest numbers', async () => {
  const reply = await shop.ask('fit-check.list-fitted-models', { part: '0048-0129' })
  expect(reply).toMatchObject({ ok: false, problem: { code: 'part-not-found', typed: '0048-0129' } })
})
