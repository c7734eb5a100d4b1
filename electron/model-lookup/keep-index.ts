import type { DatabaseHandle } from '../database/handles.ts'
import { inTransaction } from '../database/handles.ts'
import { replaceKeptIndex } from './kept-index-queries.ts'
import { layOutModels } from './lay-out-models.ts'
import { readCatalogueNumbers } from './model-index-queries.ts'
import { packLayer } from './pack-layer.ts'

/** Lays the index of the catalogue out and keeps it with the database, all of it or none. */
export function keepIndex(database: DatabaseHandle): void {
  for (let attempt = 0; attempt < mostAttempts; attempt++) {
    // One transaction that only reads: every row is of the one version.
    const { catalogueVersion, ...numbers } = database.connection.transaction(() =>
      readCatalogueNumbers(database),
    )()
    const parts = packLayer(layOutModels(numbers))
    if (inTransaction(database, writable => replaceKeptIndex(writable, { parts, catalogueVersion }))) return
  }
}

/** While others load again and again, the index is not worth keeping yet. */
const mostAttempts = 3
