import { readCatalogueVersion } from '../catalogue/catalogue-state-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { indexModels, type ModelIndex } from './index-models.ts'
import { readCatalogueNumbers } from './model-index-queries.ts'

const indexes = new WeakMap<ReadableDatabase, ModelIndex>()

/**
 * The index of the catalogue as it is now: kept with the database's handle, and built anew when the catalogue's
 * version moved, be it by a load of this program or of another.
 */
export function currentModelIndex(database: ReadableDatabase): ModelIndex {
  const kept = indexes.get(database)
  if (kept?.catalogueVersion === readCatalogueVersion(database)) return kept
  const built = indexModels(readCatalogueNumbers(database))
  indexes.set(database, built)
  return built
}
