import { z } from 'zod'
import type { ModelId, PartId } from '../../shared-schemas/identifiers.ts'
import type { Bindable, WritableDatabase } from '../database/handles.ts'
import { raiseCatalogueVersion } from './catalogue-state-queries.ts'
import { FitmentWriter } from './fitment-writer.ts'
import { appendLoadRun } from './load-run-queries.ts'

export interface Exclusion {
  readonly modelId: ModelId
  readonly partId: PartId
  /** Null: in whatever place. */
  readonly position: string | null
  readonly source: string
  readonly reason: string
  readonly at: Date
}

/**
 * Says in the catalogue that the part must not be used in the model, as a load would, under a source of its own: so no
 * supplier's list takes it back. Says whether that is new.
 */
export function appendExclusion(database: WritableDatabase, exclusion: Exclusion): boolean {
  const { modelId, partId, position, source, reason, at } = exclusion
  const fitments = new FitmentWriter(database)
  const termsId = findOrAddTerms(database, partId, position, findOrAddSource(database, source))
  if (!fitments.say(modelId, termsId)) return false
  raiseCatalogueVersion(database)
  const counts = { added: 1, changed: 0, unchanged: 0, rejected: 0 }
  appendLoadRun(database, fitments, { at, path: null, correctionReason: reason, ...counts })
  return true
}

export interface Withdrawal extends Omit<Exclusion, 'position'> {
  /** What corrections say of the model now. */
  readonly corrections: ReadonlySet<number>
}

/**
 * Takes back what a correction of this source forbids of the part in the model, as a run of its own with its reason.
 * Says whether there was anything.
 */
export function withdrawExclusions(database: WritableDatabase, withdrawal: Withdrawal): boolean {
  const { modelId, partId, source, reason, at, corrections } = withdrawal
  const standing = database
    .rows(z.object({ id: z.int() }), exclusionsOfSource, partId, source)
    .filter(({ id }) => corrections.has(id))
  if (standing.length === 0) return false
  const fitments = new FitmentWriter(database)
  for (const { id } of standing) fitments.withdraw(modelId, id)
  raiseCatalogueVersion(database)
  const counts = { added: 0, changed: standing.length, unchanged: 0, rejected: 0 }
  appendLoadRun(database, fitments, { at, path: null, correctionReason: reason, ...counts })
  return true
}

const exclusionsOfSource = `SELECT terms_id AS id FROM fitment_terms JOIN source USING (source_id)
  WHERE part_id = ? AND source.name = ? AND says = 'excludes'`

function findOrAddSource(database: WritableDatabase, name: string): number {
  return (
    findId(database, 'SELECT source_id AS id FROM source WHERE name = ?', name) ??
    database.run('INSERT INTO source (name) VALUES (?)', name).lastId
  )
}

function findOrAddTerms(
  database: WritableDatabase,
  partId: PartId,
  position: string | null,
  sourceId: number,
): number {
  const known = findId(
    database,
    `SELECT terms_id AS id FROM fitment_terms WHERE part_id = ? AND says = 'excludes' AND position IS ?
       AND source_id = ? AND made_from IS NULL AND made_to IS NULL AND serial_from IS NULL AND serial_to IS NULL
       AND quantity IS NULL`,
    partId,
    position,
    sourceId,
  )
  if (known !== undefined) return known
  return database.run(
    "INSERT INTO fitment_terms (says, part_id, position, source_id) VALUES ('excludes', ?, ?, ?)",
    partId,
    position,
    sourceId,
  ).lastId
}

function findId(database: WritableDatabase, sql: string, ...bound: readonly Bindable[]): number | undefined {
  return database.row(z.object({ id: z.int() }), sql, ...bound)?.id
}
