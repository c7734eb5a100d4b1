import { z } from 'zod'
import type { FamilyId, ModelId } from '../../shared-schemas/identifiers.ts'
import { readCatalogueVersion } from '../catalogue/catalogue-state-queries.ts'
import { listModelsOfTerms, readTermsByModel } from '../catalogue/fitments/fitment-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { daysBetween } from './made-dates.ts'
import { attributeKey, type ModelFacts } from './part-dossier.ts'
import { type DateCode, readDateCodes } from './read-date-code.ts'

/** A model without the terms that are said of it: those depend on what is asked. */
export type BareModel = Omit<ModelFacts, 'termsIds'>

const modelRow = z.object({
  model_id: z.int(),
  brand: z.string(),
  model_number: z.string(),
  model_key: z.string(),
  made_from: z.string().nullable(),
  made_to: z.string().nullable(),
  volts: z.string().nullable(),
  hertz: z.string().nullable(),
  watts: z.string().nullable(),
})

/** The models with these ids, what is stated of them for the attributes of families, and when the serial dates them. */
export function listBareModels(
  database: ReadableDatabase,
  modelIds: readonly ModelId[],
  serial: string | null = null,
): BareModel[] {
  const stated = readStatedAttributes(database, modelIds)
  const codes = serial === null ? noCodes : readDateCodesByBrand(database)
  const rows = database.rows(
    modelRow,
    `SELECT model_id, brand.name AS brand, model_number, model_key, made_from, made_to, volts, hertz, watts
     FROM json_each(?) JOIN model ON model_id = value JOIN brand USING (brand_id)`,
    JSON.stringify(modelIds),
  )
  return rows.map(row => ({
    modelId: row.model_id,
    brand: row.brand,
    modelNumber: row.model_number,
    key: row.model_key,
    made: daysBetween(row.made_from, row.made_to),
    volts: row.volts,
    hertz: row.hertz,
    watts: row.watts,
    stated: stated.get(row.model_id) ?? nothingStated,
    madeBySerial: serial === null ? [] : readDateCodes(codes.get(row.brand) ?? [], serial),
  }))
}

const noCodes: ReadonlyMap<string, DateCode[]> = new Map()

const dateCodeRow = z.object({ brand: z.string(), pattern: z.string(), means: z.string() })

/** What each brand's serials say of when an appliance was made. */
export function readDateCodesByBrand(database: ReadableDatabase): ReadonlyMap<string, DateCode[]> {
  const rows = database.rows(
    dateCodeRow,
    'SELECT brand.name AS brand, pattern, means FROM date_code JOIN brand USING (brand_id)',
  )
  return Map.groupBy(rows, ({ brand }) => brand)
}

const nothingStated: ReadonlyMap<string, string> = new Map()

function readStatedAttributes(database: ReadableDatabase, modelIds: readonly ModelId[]) {
  const rows = database.tuples<[modelId: number, familyId: FamilyId, attribute: string, value: string]>(
    `SELECT model_id, family_id, attribute, model_attribute.value
     FROM json_each(?) AS asked JOIN model_attribute ON model_id = asked.value`,
    JSON.stringify(modelIds),
  )
  const byModel = new Map<number, Map<string, string>>()
  for (const [modelId, familyId, attribute, value] of rows) {
    const key = attributeKey(familyId, attribute)
    const ofModel = byModel.get(modelId)
    if (ofModel === undefined) byModel.set(modelId, new Map([[key, value]]))
    else ofModel.set(key, value)
  }
  return byModel
}

/** Which of these terms are said of which of these models. Few models are asked for theirs; many are found from the terms. */
export function readTermsOfModels(
  database: ReadableDatabase,
  modelIds: readonly number[],
  termsIds: ReadonlySet<number>,
): ReadonlyMap<number, ReadonlySet<number>> {
  const found = new Map<number, Set<number>>(modelIds.map(id => [id, new Set()]))
  if (modelIds.length <= termsIds.size * fewModelsPerTerms) {
    for (const [modelId, ids] of readTermsByModel(database, modelIds))
      for (const termsId of ids) if (termsIds.has(termsId)) found.get(modelId)?.add(termsId)
  } else
    for (const termsId of termsIds)
      for (const modelId of listModelsOfTerms(database, termsId)) found.get(modelId)?.add(termsId)
  return found
}

/** A model has some tens of fitments, terms may be said of thousands of models. */
const fewModelsPerTerms = 20

/** The families of which any of these terms is said, of the family itself or of one of its parts. */
export function listFamiliesOfTerms(database: ReadableDatabase, termsIds: readonly number[]): FamilyId[] {
  const known = currentFamilies(database)
  const unread = termsIds.filter(id => !known.has(id))
  if (unread.length > 0)
    for (const [termsId, family] of database.tuples<[number, FamilyId]>(
      `SELECT terms_id, ifnull(fitment_terms.family_id, part.family_id)
       FROM json_each(?) AS asked JOIN fitment_terms ON terms_id = asked.value LEFT JOIN part USING (part_id)`,
      JSON.stringify(unread),
    ))
      known.set(termsId, family)
  const families = new Set<FamilyId>()
  for (const termsId of termsIds) families.add(known.get(termsId) as FamilyId)
  return [...families]
}

/** The families of terms as read so far, kept until the catalogue changes: a model has tens of terms, and all have them. */
function currentFamilies(database: ReadableDatabase): Map<number, FamilyId> {
  const version = readCatalogueVersion(database)
  const kept = familiesOfTerms.get(database)
  if (kept?.version === version) return kept.families
  const families = new Map<number, FamilyId>()
  familiesOfTerms.set(database, { version, families })
  return families
}

const familiesOfTerms = new WeakMap<
  ReadableDatabase,
  { readonly version: number; readonly families: Map<number, FamilyId> }
>()

/** All terms that are said of each of these models. */
export function readAllTermsOfModels(database: ReadableDatabase, modelIds: readonly ModelId[]) {
  const found = new Map<number, Set<number>>(modelIds.map(id => [id, new Set()]))
  for (const [modelId, termsIds] of readTermsByModel(database, modelIds))
    found.set(modelId, new Set(termsIds))
  return found
}
