import { z } from 'zod'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'

/** A list of models with wildcards, as it was written. */
export interface StoredPattern {
  readonly brandId: number
  readonly pattern: string
  readonly termsId: number
}

/** Says whether that is new. */
export function insertPattern(
  database: WritableDatabase,
  { brandId, pattern, termsId }: StoredPattern,
): boolean {
  const { changes } = database.run(
    'INSERT INTO fitment_pattern (brand_id, pattern, terms_id) VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
    ...[brandId, pattern, termsId],
  )
  return changes > 0
}

/** Says whether it was there. */
export function deletePattern(
  database: WritableDatabase,
  { brandId, pattern, termsId }: StoredPattern,
): boolean {
  const { changes } = database.run(
    'DELETE FROM fitment_pattern WHERE brand_id = ? AND pattern = ? AND terms_id = ?',
    ...[brandId, pattern, termsId],
  )
  return changes > 0
}

/** What was listed with wildcards for models of a brand. */
export function listPatternsOfBrand(database: ReadableDatabase, brandId: number): StoredPattern[] {
  return database
    .rows(patternRow, 'SELECT brand_id, pattern, terms_id FROM fitment_pattern WHERE brand_id = ?', brandId)
    .map(asPattern)
}

/** What these sources listed with wildcards. */
export function listPatternsOfSources(
  database: ReadableDatabase,
  sourceIds: readonly number[],
): StoredPattern[] {
  return database
    .rows(
      patternRow,
      `SELECT brand_id, pattern, terms_id FROM fitment_pattern JOIN fitment_terms USING (terms_id)
       WHERE source_id IN (SELECT value FROM json_each(?))`,
      JSON.stringify(sourceIds),
    )
    .map(asPattern)
}

const patternRow = z.object({ brand_id: z.int(), pattern: z.string(), terms_id: z.int() })

function asPattern({ brand_id, pattern, terms_id }: z.output<typeof patternRow>): StoredPattern {
  return { brandId: brand_id, pattern, termsId: terms_id }
}
