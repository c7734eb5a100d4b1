import { readCatalogueVersion } from '../catalogue/catalogue-state-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { CatalogueNumbers } from './index-models.ts'

/** Every printed number of the catalogue. Read as bare tuples: the tables are STRICT, and a million rows must not be checked one by one. */
export function readCatalogueNumbers(database: ReadableDatabase): CatalogueNumbers {
  const catalogueVersion = readCatalogueVersion(database)
  const models = database.tuples<[number, string, string, string, string]>(
    `SELECT model_id, name, model_number, model_key, appliance_type
     FROM model JOIN brand USING (brand_id) ORDER BY model_key, brand_id`,
  )
  const salesNames = database.tuples<[string, string, string, number]>(
    `SELECT name, sales_name, sales_key, model_id
     FROM sales_name JOIN brand USING (brand_id) ORDER BY sales_key, brand_id, model_id`,
  )
  const brands = database.tuples<[string]>('SELECT name FROM brand ORDER BY brand_id')
  return {
    catalogueVersion,
    brands: Array.from(brands, ([name]) => name),
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
