import { z } from 'zod'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import { readChangesOfModel } from '../catalogue/fitments/fitment-change-queries.ts'
import { listTermsOfModel } from '../catalogue/fitments/fitment-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { DatedRun, SaidOfModel } from './date-statements.ts'

const runColumns = 'load_run_id, loaded_at, correction_reason'
const runRow = z.object({
  load_run_id: z.int(),
  loaded_at: z.string(),
  correction_reason: z.string().nullable(),
})

/** What is said of one model, and every change of it that was kept. */
export function readSaidOfModel(database: ReadableDatabase, modelId: ModelId): SaidOfModel {
  const changes = readChangesOfModel(database, modelId)
  const runs = readRuns(database, new Set(changes.map(({ loadRunId }) => loadRunId)))
  return {
    termsIds: new Set(listTermsOfModel(database, modelId)),
    changes: changes.flatMap(({ loadRunId, change, termsIds }) => {
      const run = runs.get(loadRunId)
      if (run === undefined) throw new Error(`a change belongs to a run, but there is no run ${loadRunId}`)
      return termsIds.map(termsId => ({ termsId, change, run }))
    }),
    firstRun: readFirstRun(database),
  }
}

function readRuns(
  database: ReadableDatabase,
  loadRunIds: ReadonlySet<number>,
): ReadonlyMap<number, DatedRun> {
  const rows = database.rows(
    runRow,
    `SELECT ${runColumns} FROM json_each(?) AS asked JOIN load_run ON load_run_id = asked.value`,
    JSON.stringify([...loadRunIds]),
  )
  return new Map(rows.map(row => [row.load_run_id, asRun(row)]))
}

function readFirstRun(database: ReadableDatabase): DatedRun | null {
  const row = database.row(runRow, `SELECT ${runColumns} FROM load_run WHERE first_fitments = 1`)
  return row === undefined ? null : asRun(row)
}

function asRun(row: z.output<typeof runRow>): DatedRun {
  return { loadRunId: row.load_run_id, at: row.loaded_at, correctionReason: row.correction_reason }
}
