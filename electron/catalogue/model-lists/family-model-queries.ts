import { z } from 'zod'
import type { ReadableDatabase } from '../../database/handles.ts'
import { listModelsOfAnyTerms } from '../fitments/fitment-queries.ts'
import { asSearched, type SearchedModel } from './narrow-models.ts'
import { sortByBrand } from './sort-by-brand.ts'

/** The models for which any source lists the family or one of its parts; yields between its steps. */
export function* listModelsOfFamily(
  database: ReadableDatabase,
  familyId: number,
): Generator<number, SearchedModel[]> {
  const terms = database.rows(z.object({ terms_id: z.int() }), includingTerms, familyId)
  const modelIds = listModelsOfAnyTerms(
    database,
    terms.map(({ terms_id }) => terms_id),
  )
  const found: SearchedModel[] = []
  for (let at = 0; at < modelIds.length; at += atOnce) {
    yield at
    const some = JSON.stringify(modelIds.slice(at, at + atOnce))
    for (const [brand, modelNumber, applianceType] of database.tuples<[string, string, string]>(models, some))
      found.push(asSearched({ brand, modelNumber, applianceType, conditions: [] }))
  }
  return yield* sortByBrand(found)
}

const includingTerms = `SELECT terms_id FROM fitment_terms WHERE says = 'includes' AND family_id = ?1
  UNION ALL
  SELECT terms_id FROM part JOIN fitment_terms USING (part_id) WHERE part.family_id = ?1 AND says = 'includes'`

const models = `SELECT brand.name, model_number, appliance_type
  FROM json_each(?) JOIN model ON model_id = value JOIN brand USING (brand_id)`

/** Some milliseconds' worth. */
const atOnce = 2000
