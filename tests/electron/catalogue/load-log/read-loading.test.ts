import { expect, test } from 'vitest'
import { withCatalogueFolder } from '../../../builders/catalogue-folder.ts'
import { openTestShop } from '../../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../../builders/small-catalogue.ts'

test('while a load is under way it is told how far it is and whether it was stopped; before and after, nothing is', async () => {
  const shop = await openTestShop()
  const told: unknown[] = []
  const asking: Promise<unknown>[] = []
  const askOnce = async () => told.push((await shop.answer('catalogue.read-loading', {})).loading)
  await askOnce()
  await withCatalogueFolder(smallCatalogue, path =>
    shop.ask(
      'catalogue.load-files',
      { path },
      {
        report: ({ what }) => {
          if (what !== 'models.csv' || asking.length > 0) return
          asking.push(askOnce(), shop.answer('catalogue.stop-loading', {}).then(askOnce))
        },
      },
    ),
  )
  await Promise.all(asking)
  await askOnce()
  expect(told).toEqual([
    null,
    expect.objectContaining({ file: expect.stringMatching(/\.csv$/), isStopping: false }),
    expect.objectContaining({ file: expect.stringMatching(/\.csv$/), isStopping: true }),
    null,
  ])
  shop.close()
})
