import { v7 as newId } from 'uuid'
import { catalogueHandlers } from '../../electron/catalogue/handlers.ts'
import { readLoad } from '../../electron/catalogue/load-log/list-row-changes.ts'
import { listLoads } from '../../electron/catalogue/load-log/load-log-queries.ts'
import type { DatabaseHandle } from '../../electron/database/handles.ts'
import { inMemory, openDatabase } from '../../electron/database/open-database.ts'
import { Refusal } from '../../electron/requests/refusal.ts'
import { recordOpeningStock } from '../../electron/stock-ledger/record-opening-stock.ts'
import type { LoadReport } from '../../shared-schemas/catalogue.ts'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { LoadEntry } from '../../shared-schemas/load-log.ts'
import type { Problem } from '../../shared-schemas/problem.ts'
import { type CatalogueTexts, withCatalogueFolder } from './catalogue-folder.ts'

type Options = Partial<Omit<CheckedInput<'catalogue.load-files'>, 'path'>>

/** A migrated database in memory with the loader on it, for tests that look into the tables. */
export interface TestCatalogue {
  readonly database: DatabaseHandle
  load(files: CatalogueTexts, options?: Options): Promise<LoadReport>
  loadPath(path: string, options?: Options): Promise<LoadReport>
  undo(input: CheckedInput<'catalogue.undo-load'>): Promise<Output<'catalogue.undo-load'>>
  loads(): readonly LoadEntry[]
  read(loadRunId: number): Output<'catalogue.read-load'>
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
    device: stamp.device,
    homeFolder: import.meta.dirname,
    openOwnHandle: () => ({ handle: database, release: () => {} }),
    recordOpeningStock: (writable, opening) => recordOpeningStock(writable, stamp, opening),
  })
  const loadPath: TestCatalogue['loadPath'] = async (path, options = {}) =>
    handlers['catalogue.load-files'](
      { path, dryRun: false, strict: false, edition: false, showChanges: 0, ...options },
      { report: () => {} },
    )
  return {
    database,
    loadPath,
    undo: async input => handlers['catalogue.undo-load'](input, { report: () => {} }),
    loads: () => listLoads(database),
    read: loadRunId => readLoad(database, { loadRunId, most: 200 }),
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
