import { z } from 'zod'
import type { WritableDatabase } from '../../database/handles.ts'
import { modelsOfTerms } from './fitment-queries.ts'
import { decodeIds, mostBytes, putNumber } from './id-lists.ts'
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
  const really = { said: [] as number[], withdrawn: [] as number[] }
  for (const [index, { first_model_id: first, more_models }] of pieces.entries()) {
    const from = index === 0 ? 0 : first
    const until = pieces[index + 1]?.first_model_id ?? Infinity
    const part = { said: between(said, from, until), withdrawn: between(withdrawn, from, until) }
    if (part.said.length + part.withdrawn.length === 0) continue
    const models = decodeIds(more_models, first)
    models.unshift(first)
    const merged = merge(models, part)
    really.said.push(...merged.said)
    really.withdrawn.push(...merged.withdrawn)
    if (merged.said.length + merged.withdrawn.length === 0) continue
    database.run('DELETE FROM fitment_by_terms WHERE terms_id = ? AND first_model_id = ?', termsId, first)
    appendPieces(database, termsId, merged.models)
  }
  return {
    termsId,
    said: Uint32Array.from(really.said),
    withdrawn: Uint32Array.from(really.withdrawn),
  }
}

const pieceRow = z.object({ first_model_id: z.int(), more_models: z.instanceof(Uint8Array) })
const noModels = new Uint32Array()

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

function merge(models: readonly number[], { said, withdrawn }: Pick<TermsChange, 'said' | 'withdrawn'>) {
  const before = new Set(models)
  const isNew = said.filter(model => !before.has(model))
  const isGone = withdrawn.filter(model => before.has(model))
  const gone = new Set(isGone)
  const after = Uint32Array.from([...models.filter(model => !gone.has(model)), ...isNew]).sort()
  return { models: after, said: isNew, withdrawn: isGone }
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
