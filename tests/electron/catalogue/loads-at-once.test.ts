import path from 'node:path'
import Database from 'better-sqlite3'
import { v7 as newId } from 'uuid'
import { expect, test } from 'vitest'
import { type Application, openApplication } from '../../../electron/application.ts'
import { withCatalogueFolder } from '../../builders/catalogue-folder.ts'
import { testDay } from '../../builders/open-test-shop.ts'

const files = { 'brands.csv': 'brand\nVelmara\n', 'models.csv': 'brand,model_number\nVelmara,QT-100/1\n' }

test('two loads asked for at once are done one after the other', async () => {
  await withShopFile(async ({ shop, folder }) => {
    const load = () => shop.ask('catalogue.load-files', { path: folder })
    const replies = await Promise.all([load(), load(), load()])
    expect(replies.map(countAdded)).toEqual([2, 0, 0])
  })
})

test('a load that is refused does not stand in the way of the next', async () => {
  await withShopFile(async ({ shop, folder }) => {
    const replies = await Promise.all([
      shop.ask('catalogue.load-files', { path: path.join(folder, 'nowhere') }),
      shop.ask('catalogue.load-files', { path: folder }),
    ])
    expect(replies.map(countAdded)).toEqual(['file-unreadable', 2])
  })
})

test('a load while another program writes is refused after five seconds, and the shop left as it was', async () => {
  await withShopFile(async ({ shop, folder, file }) => {
    const other = new Database(file)
    other.exec('BEGIN IMMEDIATE')
    const reply = await shop.ask('catalogue.load-files', { path: folder })
    expect(reply).toEqual({ ok: false, problem: { code: 'database-busy', file } })
    other.exec('ROLLBACK')
    other.close()
    expect(countAdded(await shop.ask('catalogue.load-files', { path: folder }))).toBe(2)
  })
}, 20_000)

type Reply = Awaited<ReturnType<Application['ask']>>

function countAdded(reply: Reply): number | string {
  if (!reply.ok) return reply.problem.code
  // The reply to a load carries its report; the application answers any request, so its type says nothing of it.
  const { files } = reply.value as { files: readonly { added: number }[] }
  return files.reduce((sum, { added }) => sum + added, 0)
}

/** A shop in a file, since one in memory has only one connection. */
async function withShopFile(
  use: (given: { shop: Application; folder: string; file: string }) => Promise<void>,
): Promise<void> {
  await withCatalogueFolder(files, async folder => {
    const file = path.join(folder, 'shop.sqlite')
    const shop = openApplication({
      databaseFile: file,
      sampleFolder: null,
      now: () => testDay,
      newId: () => newId(),
      device: 'test-counter',
      logDefect: (_reference, _request, defect) => {
        throw defect
      },
    })
    try {
      await use({ shop, folder, file })
    } finally {
      shop.close()
    }
  })
}
