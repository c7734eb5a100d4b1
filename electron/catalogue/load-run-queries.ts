import type { WritableDatabase } from '../database/handles.ts'
import type { FitmentWriter } from './fitment-writer.ts'
import { isAnythingSaid } from './fitments/fitment-queries.ts'

/** What a run was: a load from a path with its counts, or a correction with its reason. */
export type FinishedRun = {
  readonly at: Date
  readonly added: number
  readonly changed: number
  readonly unchanged: number
  readonly rejected: number
} & (
  | { readonly path: string; readonly correctionReason: null }
  | { readonly path: null; readonly correctionReason: string }
)

/** Keeps that a run took place, once it is known what it changed. Its changes of fitments were written as they came. */
export function appendLoadRun(database: WritableDatabase, fitments: FitmentWriter, run: FinishedRun): void {
  const broughtFirst = fitments.isFirst && isAnythingSaid(database)
  database.run(
    `INSERT INTO load_run (load_run_id, loaded_at, path, correction_reason, added, changed, unchanged, rejected,
       first_fitments) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    fitments.loadRunId,
    run.at.toISOString(),
    run.path,
    run.correctionReason,
    run.added,
    run.changed,
    run.unchanged,
    run.rejected,
    broughtFirst ? 1 : 0,
  )
}
