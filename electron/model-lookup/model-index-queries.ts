import { readCatalogueVersion } from '../catalogue/catalogue-state-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { CatalogueNumbers } from './index-models.ts'
import type { PrintedNumbers } from './lay-out-models.ts'

/** Every printed number of the catalogue. Read as bare tuples: the tables are STRICT, and a million rows must not be checked one by one. */
export function readCatalogueNumbers(database: ReadableDatabase): CatalogueNumbers {
  const catalogueVersion = readCatalogueVersion(database)
  return { catalogueVersion, brands: readBrands(database), ...readNumbers(database, '') }
}

/** Every brand, in the order in which equal keys are shown. */
export function readBrands(database: ReadableDatabase): string[] {
  return Array.from(database.tuples<[string]>('SELECT name FROM brand ORDER BY brand_id'), ([name]) => name)
}

/** Which models changed since the kept index was laid out, and the numbers of those that are still there. */
export function readChangedNumbers(
  database: ReadableDatabase,
): PrintedNumbers & { readonly changed: ReadonlySet<number> } {
  const changed = database.tuples<[number]>('SELECT model_id FROM model_index_change')
  return {
    changed: new Set(Array.from(changed, ([modelId]) => modelId)),
    ...readNumbers(database, 'WHERE model_id IN (SELECT model_id FROM model_index_change)'),
  }
}

function readNumbers(database: ReadableDatabase, which: string): PrintedNumbers {
  const models = database.tuples<[number, string, string, string, string]>(
    `SELECT model_id, name, model_number, model_key, appliance_type
     FROM model JOIN brand USING (brand_id) ${which} ORDER BY model_key, brand_id`,
  )
  const salesNames = database.tuples<[string, string, string, number]>(
    `SELECT name, sales_name, sales_key, model_id
     FROM sales_name JOIN brand USING (brand_id) ${which} ORDER BY sales_key, brand_id, model_id`,
  )
  return {
    models: Array.from(models, ([modelId, brand, modelNumber, key, applianceType]) => ({
      modelId,
      brand,
      modelNumber,
      key,
      applianceType,
    })),
    salesNames: Array.from(salesNames, ([brand, salesName, key, modelId]) => ({
      brand,
      salesName,
      key,
      modelId,
    })),
  }
}
