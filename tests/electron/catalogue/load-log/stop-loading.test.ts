import { expect, test } from 'vitest'
import { withCatalogueFolder } from '../../../builders/catalogue-folder.ts'
import { openTestShop } from '../../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../../builders/small-catalogue.ts'

test('a load that is stopped half-way leaves nothing behind, and can be done again', async () => {
  const shop = await openTestShop()
  const stopping: Promise<unknown>[] = []
  const reply = await withCatalogueFolder(smallCatalogue, path =>
    shop.ask(
      'catalogue.load-files',
      { path },
      {
        report: ({ what }) => {
          if (what === 'parts.csv') stopping.push(shop.answer('catalogue.stop-loading', {}))
        },
      },
    ),
  )
  expect(reply).toEqual({ ok: false, problem: { code: 'load-stopped' } })
  expect(await Promise.all(stopping)).toContainEqual({ wasLoading: true })
  const { models, parts, catalogueVersion } = await shop.answer('catalogue.read-summary', {})
  expect({ models, parts, catalogueVersion }).toEqual({ models: 0, parts: 0, catalogueVersion: 0 })
  expect((await shop.load(smallCatalogue)).files).toHaveLength(Object.keys(smallCatalogue).length)
  shop.close()
})

test('with nothing under way there is nothing to stop, and the next load is not stopped', async () => {
  const shop = await openTestShop()
  expect(await shop.answer('catalogue.stop-loading', {})).toEqual({ wasLoading: false })
  expect((await shop.load(smallCatalogue)).rejected).toEqual([])
  shop.close()
})
