import type { ReadableDatabase } from '../../database/handles.ts'
import { listModelsOfTerms } from './fitment-queries.ts'
import { decodeIds } from './id-lists.ts'

interface FitmentsCheck {
  readonly name: string
  readonly ok: boolean
  readonly detail: string
}

/** Whether the two directions say the same of every model. */
export function checkFitments(database: ReadableDatabase): FitmentsCheck {
  const { differing, unlisted } = compareDirections(database)
  const faults = [
    ...(differing > 0 ? [`${differing} statements name other models than those that name them`] : []),
    ...(unlisted > 0 ? [`${unlisted} times a model names a statement that names no models`] : []),
  ]
  return {
    name: 'fitments',
    ok: faults.length === 0,
    detail: faults.join('; ') || 'the same from the model and from the statement',
  }
}

/** From the models, the models of all terms lie one after another: as many of each as its own list has. */
function compareDirections(database: ReadableDatabase) {
  const places = new Map<number, { start: number; next: number; end: number }>()
  let all = 0
  for (const [termsId, models] of database.tuples<[number, number]>(
    'SELECT terms_id, sum(models) FROM fitment_by_terms GROUP BY terms_id ORDER BY terms_id',
  )) {
    places.set(termsId, { start: all, next: all, end: all + models })
    all += models
  }
  const fromModels = new Uint32Array(all)
  const differing = new Set<number>()
  let unlisted = 0
  for (const [modelId, terms] of database.tuples<[number, Uint8Array]>(
    'SELECT model_id, terms FROM fitment_by_model ORDER BY model_id',
  ))
    for (const termsId of decodeIds(terms)) {
      const place = places.get(termsId)
      if (place === undefined) unlisted += 1
      else if (place.next === place.end) differing.add(termsId)
      else {
        fromModels[place.next] = modelId
        place.next += 1
      }
    }
  for (const [termsId, { start, next }] of places)
    if (!isSame(fromModels.subarray(start, next), listModelsOfTerms(database, termsId)))
      differing.add(termsId)
  return { differing: differing.size, unlisted }
}

function isSame(one: Uint32Array, other: Uint32Array): boolean {
  return one.length === other.length && one.every((id, at) => other[at] === id)
}
