import { z } from 'zod'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'
import { decodeIds, encodeIds } from './id-lists.ts'

/** What one run did to one model. */
export interface ModelChange {
  readonly modelId: number
  readonly loadRunId: number
  readonly said: readonly number[]
  readonly withdrawn: readonly number[]
}

/** Keeps what a run did to a model, beside what it did to it before. Terms are ascending. */
export function appendChanges(database: WritableDatabase, change: ModelChange): void {
  const { modelId, loadRunId, said, withdrawn } = change
  for (const [what, termsIds] of [['said', said] as const, ['withdrawn', withdrawn] as const]) {
    if (termsIds.length === 0) continue
    const before = database.row(
      termsRow,
      'SELECT terms FROM fitment_change WHERE model_id = ? AND load_run_id = ? AND change = ?',
      ...[modelId, loadRunId, what],
    )
    const all = before === undefined ? termsIds : unite(decodeIds(before.terms), termsIds)
    // Never edited, so that nobody can rewrite history; what the same run did earlier is taken up into the new row.
    if (before !== undefined)
      database.run(
        'DELETE FROM fitment_change WHERE model_id = ? AND load_run_id = ? AND change = ?',
        ...[modelId, loadRunId, what],
      )
    database.run(
      'INSERT INTO fitment_change (model_id, load_run_id, change, terms) VALUES (?, ?, ?, ?)',
      ...[modelId, loadRunId, what, encodeIds(all)],
    )
  }
}

function unite(one: readonly number[], other: readonly number[]): number[] {
  return [...new Set([...one, ...other])].sort((first, second) => first - second)
}

const termsRow = z.object({ terms: z.instanceof(Uint8Array) })

/** Every change of a model, in the order of the runs; within one, what was said before what was withdrawn. */
export function readChangesOfModel(database: ReadableDatabase, modelId: number): RunChange[] {
  return database
    .rows(
      changeRow,
      `SELECT load_run_id, change, terms FROM fitment_change WHERE model_id = ? ORDER BY load_run_id, change`,
      modelId,
    )
    .map(row => ({ loadRunId: row.load_run_id, change: row.change, termsIds: decodeIds(row.terms) }))
}

export interface RunChange {
  readonly loadRunId: number
  readonly change: Change
  readonly termsIds: readonly number[]
}

export type Change = 'said' | 'withdrawn'

const changeRow = z.object({
  load_run_id: z.int(),
  change: z.enum(['said', 'withdrawn']),
  terms: z.instanceof(Uint8Array),
})

/** Takes the history of those models that are about to go, of which nothing is said any more. */
export function forgetChangesOfUnsaidModels(database: WritableDatabase, modelIds: readonly number[]): void {
  database.run(
    `DELETE FROM fitment_change WHERE model_id IN (SELECT value FROM json_each(?))
       AND NOT EXISTS (SELECT 1 FROM fitment_by_model AS said WHERE said.model_id = fitment_change.model_id)`,
    JSON.stringify(modelIds),
  )
}

/** Takes these terms out of the history of every model, because what they speak of is about to go. */
export function forgetChangesOfTerms(database: WritableDatabase, termsIds: ReadonlySet<number>): void {
  if (termsIds.size === 0) return
  const rows = database.tuples<[number, number, Change, Uint8Array]>(
    'SELECT model_id, load_run_id, change, terms FROM fitment_change',
  )
  const touched: (readonly [number, number, Change, number[]])[] = []
  for (const [modelId, loadRunId, change, terms] of rows) {
    const all = decodeIds(terms)
    const left = all.filter(termsId => !termsIds.has(termsId))
    if (left.length < all.length) touched.push([modelId, loadRunId, change, left])
  }
  for (const [modelId, loadRunId, change, left] of touched) {
    database.run(
      'DELETE FROM fitment_change WHERE model_id = ? AND load_run_id = ? AND change = ?',
      ...[modelId, loadRunId, change],
    )
    if (left.length > 0)
      database.run(
        'INSERT INTO fitment_change (model_id, load_run_id, change, terms) VALUES (?, ?, ?, ?)',
        ...[modelId, loadRunId, change, encodeIds(left)],
      )
  }
}
