import { z } from 'zod'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'
import type { FitmentWriter } from '../fitment-writer.ts'
import type { ChangeSpan } from './load-log-queries.ts'

/** Withdraws what a run said, and says again what it withdrew, where that still stands as the run left it. */
export function undoFitments(database: ReadableDatabase, fitments: FitmentWriter, loadRunId: number): void {
  for (const [modelId, termsId] of listSaidFirst(database, loadRunId)) fitments.withdraw(modelId, termsId)
  const changes = [
    ...database.tuples<[number, number, 'said' | 'withdrawn']>(
      'SELECT model_id, terms_id, change FROM fitment_change WHERE load_run_id = ? ORDER BY change DESC',
      loadRunId,
    ),
  ]
  for (const [modelId, termsId, change] of changes) {
    if (change === 'said') fitments.withdraw(modelId, termsId)
    else fitments.say(modelId, termsId)
  }
}

/** The run that brought the first fitments has no changes of its own: what no later run said is its. */
function listSaidFirst(database: ReadableDatabase, loadRunId: number): [number, number][] {
  const first = database.row(
    z.object({ first_fitments: z.int() }),
    'SELECT first_fitments FROM load_run WHERE load_run_id = ?',
    loadRunId,
  )
  if (first?.first_fitments !== 1) return []
  return [
    ...database.tuples<[number, number]>(
      `SELECT model_id, terms_id FROM fitment WHERE NOT EXISTS (
         SELECT 1 FROM fitment_change AS later
         WHERE later.model_id = fitment.model_id AND later.terms_id = fitment.terms_id)`,
    ),
  ]
}

/**
 * Takes the history of models, parts and families that a load brought, which nothing is said of any more: nobody can ask
 * about what is no longer there.
 */
export function forgetFitments(database: WritableDatabase, { first, last }: ChangeSpan): void {
  for (const forget of [forgetChangesOfModels, forgetChangesOfTerms, forgetTerms])
    database.run(forget, first, last)
}

const added = (table: string) =>
  `SELECT json_extract(row_key, '$[0]') FROM load_change
   WHERE change_id BETWEEN ?1 AND ?2 AND change = 'added' AND table_name = '${table}'`

const unsaidTerms = `SELECT terms_id FROM fitment_terms
  WHERE (part_id IN (${added('part')}) OR family_id IN (${added('family')}))
    AND NOT EXISTS (SELECT 1 FROM fitment WHERE fitment.terms_id = fitment_terms.terms_id)`

const forgetChangesOfModels = `DELETE FROM fitment_change WHERE model_id IN (${added('model')})
  AND NOT EXISTS (SELECT 1 FROM fitment WHERE fitment.model_id = fitment_change.model_id)`
const forgetChangesOfTerms = `DELETE FROM fitment_change WHERE terms_id IN (${unsaidTerms})`
const forgetTerms = `DELETE FROM fitment_terms WHERE terms_id IN (${unsaidTerms})
  AND NOT EXISTS (SELECT 1 FROM fitment_pattern WHERE fitment_pattern.terms_id = fitment_terms.terms_id)`
