import { z } from 'zod'
import type { ReadableDatabase } from '../../database/handles.ts'
import type { FitmentWriter } from '../fitment-writer.ts'
import { type Change, readChangesOfModel } from './fitment-change-queries.ts'
import { GatheredPairs } from './gathered-pairs.ts'
import { decodeIds } from './id-lists.ts'
import type { TermsChange } from './write-fitments.ts'

/**
 * Withdraws what a run said, and says again what it withdrew: fitments are as they were before it. What a later run
 * changed again stays as that left it, unless that run was undone itself. Yields how far it has come.
 */
export function* undoFitmentsOf(
  database: ReadableDatabase,
  fitments: FitmentWriter,
  loadRunId: number,
): Generator<number, void> {
  const [said, withdrawn] = [new GatheredPairs(), new GatheredPairs()]
  const standing = listLaterRunsThatStand(database, loadRunId)
  const changes = isOfFirstFitments(database, loadRunId)
    ? readSaidFirst(database)
    : readNetChanges(database, loadRunId)
  for (const { modelId, change, termsIds } of changes) {
    const changedSince = standing.size === 0 ? noTerms : listTermsChangedBy(database, modelId, standing)
    for (const termsId of termsIds)
      if (!changedSince.has(termsId)) (change === 'said' ? said : withdrawn).add(modelId, termsId)
    yield 0
  }
  yield* fitments.write(mergeByTerms(said.asWithdrawn(), withdrawn.asSaid()))
}

const noTerms: ReadonlySet<number> = new Set()

interface NetChange {
  readonly modelId: number
  readonly change: Change
  readonly termsIds: readonly number[]
}

/** What a run did in the end: what came and went within it was never said to anybody. */
function* readNetChanges(database: ReadableDatabase, loadRunId: number): Iterable<NetChange> {
  for (const { from, to } of stretchesOfModels(database)) {
    const rows = Array.from(
      database.tuples<[number, Change, Uint8Array]>(changesOfRun, loadRunId, from, to),
      ([modelId, change, terms]) => ({ modelId, change, ids: decodeIds(terms) }),
    )
    for (const ofModel of Map.groupBy(rows, ({ modelId }) => modelId).values())
      for (const { modelId, change, ids } of ofModel) {
        const others = new Set(ofModel.flatMap(other => (other.change === change ? [] : other.ids)))
        yield { modelId, change, termsIds: ids.filter(id => !others.has(id)) }
      }
  }
}

export const changesOfRun = `SELECT model_id, change, terms FROM fitment_change
  WHERE load_run_id = ? AND model_id BETWEEN ? AND ? ORDER BY model_id`

/** The run that brought the first fitments has no changes of its own: what no later run said first is its. */
function* readSaidFirst(database: ReadableDatabase): Iterable<NetChange> {
  for (const { from, to } of stretchesOfModels(database)) {
    const models = [
      ...database.tuples<[number, Uint8Array]>(
        'SELECT model_id, terms FROM fitment_by_model WHERE model_id BETWEEN ? AND ? ORDER BY model_id',
        from,
        to,
      ),
    ]
    for (const [modelId, terms] of models) {
      const first = new Map<number, Change>()
      for (const { change, termsIds } of readChangesOfModel(database, modelId))
        for (const termsId of termsIds) if (!first.has(termsId)) first.set(termsId, change)
      yield { modelId, change: 'said', termsIds: decodeIds(terms).filter(id => first.get(id) !== 'said') }
    }
  }
}

/** Some thousand models at a time, so that what a run changed need not stand in memory at once. */
function* stretchesOfModels(database: ReadableDatabase) {
  const all = z.object({ last: z.int() })
  const last = database.row(all, 'SELECT ifnull(max(model_id), 0) AS last FROM model')?.last ?? 0
  for (let from = 0; from <= last; from += modelsAtOnce) yield { from, to: from + modelsAtOnce - 1 }
}

const modelsAtOnce = 5_000

function isOfFirstFitments(database: ReadableDatabase, loadRunId: number): boolean {
  const run = database.row(
    z.object({ first_fitments: z.int() }),
    'SELECT first_fitments FROM load_run WHERE load_run_id = ?',
    loadRunId,
  )
  return run?.first_fitments === 1
}

/** Of an undoing and what it undid nothing stands. */
function listLaterRunsThatStand(database: ReadableDatabase, loadRunId: number): ReadonlySet<number> {
  const rows = database.rows(
    z.object({ load_run_id: z.int() }),
    `SELECT load_run_id FROM load_run
     WHERE load_run_id > ? AND NOT EXISTS (
       SELECT 1 FROM load_account
       WHERE undoes IS NOT NULL AND load_run.load_run_id IN (load_account.load_run_id, undoes))`,
    loadRunId,
  )
  return new Set(rows.map(row => row.load_run_id))
}

function listTermsChangedBy(
  database: ReadableDatabase,
  modelId: number,
  runs: ReadonlySet<number>,
): ReadonlySet<number> {
  const changes = readChangesOfModel(database, modelId)
  return new Set(changes.flatMap(({ loadRunId, termsIds }) => (runs.has(loadRunId) ? termsIds : [])))
}

function mergeByTerms(withdrawing: readonly TermsChange[], saying: readonly TermsChange[]): TermsChange[] {
  const merged = new Map(withdrawing.map(change => [change.termsId, change]))
  for (const { termsId, said } of saying) {
    const withdrawn = merged.get(termsId)?.withdrawn ?? new Uint32Array()
    merged.set(termsId, { termsId, said, withdrawn })
  }
  return [...merged.values()].sort((one, other) => one.termsId - other.termsId)
}
