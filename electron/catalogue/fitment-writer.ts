import { z } from 'zod'
import type { WritableDatabase } from '../database/handles.ts'

/**
 * The one place that says something of a model or takes it back, so that what changed is kept with its date. A
 * catalogue without fitments begins unrecorded: their date is the run's, and a row for each would only repeat it.
 */
export class FitmentWriter {
  readonly loadRunId: number
  /** Whether this run brings the first fitments there are. */
  readonly isFirst: boolean
  readonly #database: WritableDatabase

  constructor(database: WritableDatabase) {
    this.#database = database
    this.loadRunId = readNextRunId(database)
    this.isFirst = database.row(z.object({ one: z.int() }), anyFitmentEver) === undefined
  }

  /** Says these terms of the model; false where they were said already. */
  say(modelId: number, termsId: number): boolean {
    const isNew = this.#database.run(addFitment, modelId, termsId).changes > 0
    if (isNew) this.#record(modelId, termsId, 'said')
    return isNew
  }

  /** Takes these terms back from the model; false where they were not said. */
  withdraw(modelId: number, termsId: number): boolean {
    const wasSaid = this.#database.run(removeFitment, modelId, termsId).changes > 0
    if (wasSaid) this.#record(modelId, termsId, 'withdrawn')
    return wasSaid
  }

  #record(modelId: number, termsId: number, change: 'said' | 'withdrawn'): void {
    if (!this.isFirst) this.#database.run(addChange, modelId, termsId, this.loadRunId, change)
  }
}

const anyFitmentEver = `SELECT 1 AS one WHERE EXISTS (SELECT 1 FROM fitment)
  OR EXISTS (SELECT 1 FROM load_run WHERE first_fitments = 1)`
const addFitment = 'INSERT INTO fitment (model_id, terms_id) VALUES (?, ?) ON CONFLICT DO NOTHING'
const removeFitment = 'DELETE FROM fitment WHERE model_id = ? AND terms_id = ?'
const addChange = 'INSERT INTO fitment_change (model_id, terms_id, load_run_id, change) VALUES (?, ?, ?, ?)'

function readNextRunId(database: WritableDatabase): number {
  const next = database.row(
    z.object({ id: z.int() }),
    'SELECT ifnull(max(load_run_id), 0) + 1 AS id FROM load_run',
  )
  if (next === undefined) throw new Error('an aggregate has one row')
  return next.id
}
