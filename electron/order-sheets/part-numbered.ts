import { findPartByNumber, listNearestPartNumbers, type Part } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'

/** The part with this number, whichever of its numbers it is. */
export function partNumbered(database: ReadableDatabase, typed: string): Part {
  const part = findPartByNumber(database, typed)
  if (part === undefined) throw partNotFound(database, typed)
  return part
}

export function partNotFound(database: ReadableDatabase, typed: string): Refusal {
  return new Refusal({ code: 'part-not-found', typed, nearest: listNearestPartNumbers(database, typed) })
}
