import { findPartByNumber, listNearestPartNumbers, type Part } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { OpenModel, OpenModels } from '../model-lookup/open-models.ts'
import { type Decided, Refusal } from '../requests/refusal.ts'

/** The one model that a record can be of: its number was given as it is printed, and no other has it. */
export function settleModel({ models, agreement, typed }: OpenModels): Decided<OpenModel> {
  const [model, ...others] = models
  if (model !== undefined && others.length === 0 && agreement === 'agrees') return { ok: true, value: model }
  const first = models.slice(0, mostNamed).map(({ brand, modelNumber }) => `${brand} ${modelNumber}`)
  return { ok: false, problem: { code: 'model-not-settled', typed, open: models.length, first } }
}

const mostNamed = 3

/** The part that carries the number, or a refusal that names the nearest. */
export function findPartOrRefuse(database: ReadableDatabase, typed: string): Part {
  const part = findPartByNumber(database, typed)
  if (part !== undefined) return part
  throw new Refusal({ code: 'part-not-found', typed, nearest: listNearestPartNumbers(database, typed) })
}
