import { z } from 'zod'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { DatedRun, SaidOfModel } from './date-statements.ts'
import { readAllTermsOfModels } from './model-facts-queries.ts'

const runColumns = 'load_run_id, loaded_at, correction_reason'
const runRow = z.object({
  load_run_id: z.int(),
  loaded_at: z.string(),
  correction_reason: z.string().nullable(),
})
const changeRow = runRow.extend({ terms_id: z.int(), change: z.enum(['said', 'withdrawn']) })

/** What is said of one model, and every change of it that was kept. */
export function readSaidOfModel(database: ReadableDatabase, modelId: ModelId): SaidOfModel {
  const changes = database.rows(
    changeRow,
    `SELECT terms_id, change, ${runColumns} FROM fitment_change JOIN load_run USING (load_run_id)
     WHERE model_id = ? ORDER BY load_run_id, change`,
    modelId,
  )
  return {
    termsIds: readAllTermsOfModels(database, [modelId]).get(modelId) ?? new Set(),
    changes: changes.map(row => ({ termsId: row.terms_id, change: row.change, run: asRun(row) })),
    firstRun: readFirstRun(database),
  }
}

function readFirstRun(database: ReadableDatabase): DatedRun | null {
  const row = database.row(runRow, `SELECT ${runColumns} FROM load_run WHERE first_fitments = 1`)
  return row === undefined ? null : asRun(row)
}

function asRun(row: z.output<typeof runRow>): DatedRun {
  return { loadRunId: row.load_run_id, at: row.loaded_at, correctionReason: row.correction_reason }
}
