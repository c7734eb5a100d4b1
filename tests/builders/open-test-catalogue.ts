import { v7 as newId } from 'uuid'
import { catalogueHandlers } from '../../electron/catalogue/handlers.ts'
import type { DatabaseHandle } from '../../electron/database/handles.ts'
import { inMemory, openDatabase } from '../../electron/database/open-database.ts'
import { Refusal } from '../../electron/requests/refusal.ts'
import { recordOpeningStock } from '../../electron/stock-ledger/record-opening-stock.ts'
import type { LoadReport } from '../../shared-schemas/catalogue.ts'
import type { CheckedInput } from '../../shared-schemas/index.ts'
import type { Problem } from '../../shared-schemas/problem.ts'
import { type CatalogueTexts, withCatalogueFolder } from './catalogue-folder.ts'

type Options = Partial<Omit<CheckedInput<'catalogue.load-files'>, 'path'>>

/** A migrated database in memory with the loader on it, for tests that look into the tables. */
export interface TestCatalogue {
  readonly database: DatabaseHandle
  load(files: CatalogueTexts, options?: Options): Promise<LoadReport>
  loadPath(path: string, options?: Options): Promise<LoadReport>
}

export function openTestCatalogue(): TestCatalogue {
  const database = openDatabase(inMemory)
  const stamp = {
    newId: () => newId(),
    now: () => new Date('2026-11-23T09:00:00Z'),
    device: 'test-counter',
  }
  const handlers = catalogueHandlers({
    database,
    now: stamp.now,
    openOwnHandle: () => ({ handle: database, release: () => {} }),
    recordOpeningStock: (writable, opening) => recordOpeningStock(writable, stamp, opening),
  })
  const loadPath: TestCatalogue['loadPath'] = async (path, options = {}) =>
    handlers['catalogue.load-files']({ path, dryRun: false, strict: false, ...options }, { report: () => {} })
  return {
    database,
    loadPath,
    load: (files, options) => withCatalogueFolder(files, folder => loadPath(folder, options)),
  }
}

/** The problem with which something was refused; fails when it was done, or broke otherwise. */
export async function problemOf(attempt: Promise<unknown>): Promise<Problem> {
  try {
    await attempt
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.problem
    throw thrown
  }
  throw new Error('this should have been refused, and was done')
}
