import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { raiseCatalogueVersion } from '../../../electron/catalogue/catalogue-state-queries.ts'
import { type DatabaseHandle, inTransaction } from '../../../electron/database/handles.ts'
import { openDatabase } from '../../../electron/database/open-database.ts'
import { startKeepIndexThread } from '../../../electron/hosts/start-keep-index.ts'
import { currentModelIndex } from '../../../electron/model-lookup/current-model-index.ts'
import { findOpenModels } from '../../../electron/model-lookup/find-open-models.ts'
import { type IndexKeeper, openIndexKeeper } from '../../../electron/model-lookup/index-keeper.ts'
import { countChanges, readKeptIndex } from '../../../electron/model-lookup/kept-index-queries.ts'

let folder: string
let database: DatabaseHandle
let keeper: IndexKeeper
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-test-'))
  const databaseFile = path.join(folder, 'shop.sqlite')
  database = openDatabase(databaseFile)
  keeper = openIndexKeeper({
    database,
    startLayingOut: () => startKeepIndexThread(databaseFile),
    sizes: { fewestModels: 5, fewestFolded: 3 },
  })
})
afterEach(() => {
  keeper.close()
  database.close()
  rmSync(folder, { recursive: true })
})

function addModels(from: number, count: number): void {
  inTransaction(database, writable => {
    writable.run("INSERT OR IGNORE INTO brand VALUES (1, 'Ostrel', 'OSTREL')")
    for (let at = from; at < from + count; at++) {
      const number = `ODW${4500 + at}/01`
      writable.run(
        "INSERT INTO model (brand_id, model_number, model_key, appliance_type) VALUES (1, ?, ?, 'washer')",
        number,
        number.replace('/', ''),
      )
    }
    raiseCatalogueVersion(writable)
  })
}

const outcomeOf = (text: string) => findOpenModels(currentModelIndex(database), { text }).outcome

test('a small catalogue is laid out on the spot, and nothing is kept', async () => {
  addModels(0, 4)
  await keeper.ready()
  expect(readKeptIndex(database)).toBeUndefined()
  expect(outcomeOf('ODW4503/01')).toBe('exact')
})

test('a large one is laid out by a thread, kept, and laid out anew when enough has changed', async () => {
  addModels(0, 20)
  await keeper.ready()
  const first = readKeptIndex(database)
  expect(first).toMatchObject({ catalogueVersion: 1 })
  expect(outcomeOf('ODW4519/01')).toBe('exact')

  addModels(20, 2)
  await keeper.ready()
  expect(outcomeOf('ODW4521/01')).toBe('exact')
  expect(readKeptIndex(database)).toEqual(first)

  addModels(22, 2)
  // Enough has changed: the question is answered from the changes, and meanwhile a thread lays out another.
  await keeper.ready()
  expect(outcomeOf('ODW4523/01')).toBe('exact')
  await expect.poll(() => readKeptIndex(database)?.catalogueVersion, { timeout: 20_000 }).toBe(3)
  expect(countChanges(database)).toBe(0)
  addModels(24, 1)
  expect(outcomeOf('ODW4523/01')).toBe('exact')
  expect(outcomeOf('ODW4524/01')).toBe('exact')
}, 60_000)

test('where the thread cannot do its work, the question is answered all the same', async () => {
  const elsewhere = openIndexKeeper({
    database,
    startLayingOut: () => startKeepIndexThread(path.join(folder, 'no such folder', 'shop.sqlite')),
    sizes: { fewestModels: 1, fewestFolded: 1 },
  })
  addModels(0, 2)
  await elsewhere.ready()
  expect(readKeptIndex(database)).toBeUndefined()
  expect(outcomeOf('ODW4501/01')).toBe('exact')
}, 60_000)
