import { z } from 'zod'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'

const versionRow = z.object({ version: z.int() })

/** Rises by one with every load that changed something; whatever is kept in memory is stamped with it. 0: nothing was ever loaded. */
export function readCatalogueVersion(database: ReadableDatabase): number {
  return database.row(versionRow, 'SELECT version FROM catalogue_state')?.version ?? 0
}

export function raiseCatalogueVersion(database: WritableDatabase): void {
  database.run('UPDATE catalogue_state SET version = version + 1')
}
