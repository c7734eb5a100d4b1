import { z } from 'zod'
import type { WritableDatabase } from '../database/handles.ts'
import { isAnythingSaid } from './fitments/fitment-queries.ts'
import { GatheredPairs } from './fitments/gathered-pairs.ts'
import { finishAtOnce } from './fitments/take-breaths.ts'
import { type TermsChange, writeFitments } from './fitments/write-fitments.ts'

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
    this.isFirst =
      !isAnythingSaid(database) &&
      database.row(z.object({ one: z.int() }), 'SELECT 1 AS one FROM load_run WHERE first_fitments = 1') ===
        undefined
  }

  /** Says these terms of the model; false where they were said already. */
  say(modelId: number, termsId: number): boolean {
    const change = { termsId, said: Uint32Array.of(modelId), withdrawn: new Uint32Array() }
    return finishAtOnce(this.write([change])).some(({ said }) => said.length > 0)
  }

  /** Takes these terms back from the model; false where they were not said. */
  withdraw(modelId: number, termsId: number): boolean {
    const change = { termsId, said: new Uint32Array(), withdrawn: Uint32Array.of(modelId) }
    return finishAtOnce(this.write([change])).some(({ withdrawn }) => withdrawn.length > 0)
  }

  /** Says terms of models, pair by pair in any order; said already does no harm. */
  sayAll(pairs: Iterable<readonly [modelId: number, termsId: number]>): void {
    const gathered = new GatheredPairs()
    for (const [modelId, termsId] of pairs) gathered.add(modelId, termsId)
    finishAtOnce(this.write(gathered.asSaid()))
  }

  /** Writes many changes, and yields how far it has come; gives what of them was new. */
  write(changes: readonly TermsChange[]): Generator<number, TermsChange[]> {
    return writeFitments(this.#database, changes, this.isFirst ? null : this.loadRunId)
  }
}

function readNextRunId(database: WritableDatabase): number {
  const next = database.row(
    z.object({ id: z.int() }),
    'SELECT ifnull(max(load_run_id), 0) + 1 AS id FROM load_run',
  )
  if (next === undefined) throw new Error('an aggregate has one row')
  return next.id
}
