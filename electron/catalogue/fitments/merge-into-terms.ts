import { z } from 'zod'
import type { WritableDatabase } from '../../database/handles.ts'
import { modelsOfTerms } from './fitment-queries.ts'
import { decodeInto, mostBytes, putNumber } from './id-lists.ts'
import type { TermsChange } from './write-fitments.ts'

/** Writes a change into the models of its terms and gives what of it was really new. Only the pieces it touches are rewritten. */
export function mergeIntoTerms(
  database: WritableDatabase,
  change: TermsChange,
  isFresh: boolean,
): TermsChange {
  const { termsId, said, withdrawn } = change
  const pieces = isFresh ? [] : database.rows(pieceRow, modelsOfTerms, termsId)
  if (pieces.length === 0) {
    appendPieces(database, termsId, said)
    return { termsId, said, withdrawn: noModels }
  }
  let really: Pick<TermsChange, 'said' | 'withdrawn'> = { said: noModels, withdrawn: noModels }
  for (const [index, { first_model_id: first, models: count, more_models }] of pieces.entries()) {
    const from = index === 0 ? 0 : first
    const until = pieces[index + 1]?.first_model_id ?? Infinity
    const part = { said: between(said, from, until), withdrawn: between(withdrawn, from, until) }
    if (part.said.length + part.withdrawn.length === 0) continue
    const models = new Uint32Array(count)
    models[0] = first
    decodeInto(models, 1, more_models, first)
    const isNew = without(part.said, models)
    const isGone = without(part.withdrawn, without(part.withdrawn, models))
    if (isNew.length + isGone.length === 0) continue
    really = { said: join(really.said, isNew), withdrawn: join(really.withdrawn, isGone) }
    database.run('DELETE FROM fitment_by_terms WHERE terms_id = ? AND first_model_id = ?', termsId, first)
    appendPieces(database, termsId, join(without(models, isGone), isNew).sort())
  }
  return { termsId, ...really }
}

const pieceRow = z.object({ first_model_id: z.int(), models: z.int(), more_models: z.instanceof(Uint8Array) })
const noModels: Uint32Array = new Uint32Array()

/** The ids from one to below another, of ascending ones. */
function between(ids: Uint32Array, from: number, until: number): Uint32Array {
  return ids.subarray(firstNotBelow(ids, from), firstNotBelow(ids, until))
}

function firstNotBelow(ids: Uint32Array, bound: number): number {
  let [low, high] = [0, ids.length]
  while (low < high) {
    const middle = (low + high) >>> 1
    if ((ids[middle] as number) < bound) low = middle + 1
    else high = middle
  }
  return low
}

/** The ids of one ascending list that are not in another. */
function without(ids: Uint32Array, others: Uint32Array): Uint32Array {
  const left = new Uint32Array(ids.length)
  let [kept, other] = [0, 0]
  for (let at = 0; at < ids.length; at += 1) {
    const id = ids[at] as number
    while (other < others.length && (others[other] as number) < id) other += 1
    if (others[other] === id) continue
    left[kept] = id
    kept += 1
  }
  return left.subarray(0, kept)
}

function join(one: Uint32Array, other: Uint32Array): Uint32Array {
  if (other.length === 0) return one
  const both = new Uint32Array(one.length + other.length)
  both.set(one)
  both.set(other, one.length)
  return both
}

/** A row of more than about 1,000 bytes would not stand whole on a page of an index. */
const pieceBytes = 900
const scratch = new Uint8Array(pieceBytes + mostBytes)

function appendPieces(database: WritableDatabase, termsId: number, models: Uint32Array): void {
  let at = 0
  while (at < models.length) {
    const first = models[at] as number
    let [end, bytes, before] = [at + 1, 0, first]
    while (end < models.length && bytes < pieceBytes) {
      const model = models[end] as number
      bytes = putNumber(scratch, bytes, model - before)
      before = model
      end += 1
    }
    database.run(
      'INSERT INTO fitment_by_terms (terms_id, first_model_id, models, more_models) VALUES (?, ?, ?, ?)',
      termsId,
      first,
      end - at,
      scratch.subarray(0, bytes),
    )
    at = end
  }
}
