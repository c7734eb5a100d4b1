import { z } from 'zod'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'
import { forgetChangesOfTerms, forgetChangesOfUnsaidModels } from '../fitments/fitment-change-queries.ts'
import type { ChangeSpan } from './load-log-queries.ts'

/**
 * Takes the history of models, parts and families that a load brought, which nothing is said of any more: nobody can ask
 * about what is no longer there.
 */
export function forgetFitments(database: WritableDatabase, changes: ChangeSpan): void {
  forgetChangesOfUnsaidModels(database, listIds(database, added('model'), changes))
  const unsaid = listIds(database, unsaidTerms, changes)
  forgetChangesOfTerms(database, new Set(unsaid))
  database.run(
    `DELETE FROM fitment_terms WHERE terms_id IN (SELECT value FROM json_each(?))
       AND NOT EXISTS (SELECT 1 FROM fitment_pattern WHERE fitment_pattern.terms_id = fitment_terms.terms_id)`,
    JSON.stringify(unsaid),
  )
}

const added = (table: string) =>
  `SELECT json_extract(row_key, '$[0]') AS id FROM load_change
   WHERE change_id BETWEEN ?1 AND ?2 AND change = 'added' AND table_name = '${table}'`

const unsaidTerms = `SELECT terms_id AS id FROM fitment_terms
  WHERE (part_id IN (${added('part')}) OR family_id IN (${added('family')}))
    AND NOT EXISTS (SELECT 1 FROM fitment_by_terms AS said WHERE said.terms_id = fitment_terms.terms_id)`

function listIds(database: ReadableDatabase, sql: string, { first, last }: ChangeSpan): number[] {
  return database.rows(z.object({ id: z.int() }), sql, first, last).map(({ id }) => id)
}
