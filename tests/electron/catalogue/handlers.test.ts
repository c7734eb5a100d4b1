import { expect, test } from 'vitest'
import { openTestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

test('the summary says how much the catalogue holds', async () => {
  const shop = await openTestShop(smallCatalogue)
  expect(await shop.answer('catalogue.read-summary', {})).toEqual({
    catalogueVersion: 1,
    brands: ['Brennick', 'Ostrel'],
    applianceTypes: ['dryer', 'washer'],
    models: 4,
    families: 2,
    parts: 5,
    fitments: 5,
    locations: [
      { location: 'shop', kind: 'shop', name: 'Shop' },
      { location: 'van-1', kind: 'van', name: 'Van 1, Otter' },
    ],
  })
  shop.close()
})

test('an empty shop has an empty summary', async () => {
  const shop = await openTestShop()
  expect(await shop.answer('catalogue.read-summary', {})).toMatchObject({
    catalogueVersion: 0,
    brands: [],
    models: 0,
  })
  shop.close()
})

test('what was loaded as opening stock is on hand', async () => {
  const shop = await openTestShop(smallCatalogue)
  const { rows } = await shop.answer('stock-ledger.list-on-hand', { part: '00480121' })
  expect(rows).toMatchObject([{ location: 'shop', quantity: 5, bin: 'A1' }])
  shop.close()
})

test('a strict load with a faulty row is refused in words that name the row', async () => {
  const shop = await openTestShop()
  await expect(shop.load({ 'brands.csv': 'brand\nOstrel\n--\n' })).rejects.toThrow(
    '1 row was rejected, so nothing was loaded. brands.csv, line 3, brand “--” holds no letter and no digit',
  )
  expect(await shop.answer('catalogue.read-summary', {})).toMatchObject({ brands: [] })
  shop.close()
})

test('a load reports how far it has come, file by file', async () => {
  const shop = await openTestShop()
  const seen: string[] = []
  await shop.load(smallCatalogue, {
    report: ({ what, done, expected }) => seen.push(`${what} ${done}/${expected}`),
  })
  expect(seen.filter(step => step.startsWith('models.csv'))).toContain('models.csv 4/4')
  expect(new Set(seen.map(step => step.split(' ')[0])).size).toBe(Object.keys(smallCatalogue).length)
  shop.close()
})
