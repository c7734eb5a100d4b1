import { z } from 'zod'
import type { ReadableDatabase } from '../../database/handles.ts'
import { decodeIds, decodeInto } from './id-lists.ts'

/** The terms that are said of a model, ascending. */
export function listTermsOfModel(database: ReadableDatabase, modelId: number): number[] {
  const row = database.row(termsRow, 'SELECT terms FROM fitment_by_model WHERE model_id = ?', modelId)
  return row === undefined ? [] : decodeIds(row.terms)
}

/** The same for many models. One of which nothing is said is left out. */
export function* readTermsByModel(
  database: ReadableDatabase,
  modelIds: readonly number[],
): Iterable<readonly [modelId: number, termsIds: number[]]> {
  if (modelIds.length <= fewModels) {
    for (const modelId of modelIds) yield [modelId, listTermsOfModel(database, modelId)]
    return
  }
  const rows = database.tuples<[number, Uint8Array]>(termsOfModels, JSON.stringify(modelIds))
  for (const [modelId, terms] of rows) yield [modelId, decodeIds(terms)]
}

/** Up to so many, single reads take less than a list does to be written and read. */
const fewModels = 8

export const termsOfModels = `SELECT model_id, terms
  FROM json_each(?) AS asked CROSS JOIN fitment_by_model ON model_id = asked.value`

/** The models of which these terms are said, ascending. */
export function listModelsOfTerms(database: ReadableDatabase, termsId: number): Uint32Array {
  const pieces = database.rows(pieceRow, modelsOfTerms, termsId)
  const all = new Uint32Array(pieces.reduce((sum, { models }) => sum + models, 0))
  let count = 0
  for (const { first_model_id, more_models } of pieces) {
    all[count] = first_model_id
    count = decodeInto(all, count + 1, more_models, first_model_id)
  }
  return all
}

export const modelsOfTerms = `SELECT first_model_id, models, more_models FROM fitment_by_terms
  WHERE terms_id = ? ORDER BY first_model_id`

/** The models of which any of these terms is said, ascending. */
export function listModelsOfAnyTerms(database: ReadableDatabase, termsIds: Iterable<number>): number[] {
  const all = new Set<number>()
  for (const termsId of termsIds) for (const modelId of listModelsOfTerms(database, termsId)) all.add(modelId)
  return [...Uint32Array.from(all).sort()]
}

/** Whether these terms are said of the model. */
export function isSaid(database: ReadableDatabase, modelId: number, termsId: number): boolean {
  return listTermsOfModel(database, modelId).includes(termsId)
}

/** Whether anything is said of any model. */
export function isAnythingSaid(database: ReadableDatabase): boolean {
  return (
    database.row(z.object({ one: z.int() }), 'SELECT 1 AS one FROM fitment_by_model LIMIT 1') !== undefined
  )
}

/** How many fitments there are: terms that are said of a model. */
export function countFitments(database: ReadableDatabase): number {
  const count = z.object({ fitments: z.int() })
  return database.row(count, 'SELECT ifnull(sum(models), 0) AS fitments FROM fitment_by_terms')?.fitments ?? 0
}

const bytes = z.instanceof(Uint8Array)
const termsRow = z.object({ terms: bytes })
const pieceRow = z.object({ first_model_id: z.int(), models: z.int(), more_models: bytes })
