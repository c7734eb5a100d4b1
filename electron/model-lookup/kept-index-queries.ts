import { z } from 'zod'
import { readCatalogueVersion } from '../catalogue/catalogue-state-queries.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { Numbers } from './key-table.ts'
import { type LayerParts, layerFormat } from './pack-layer.ts'

/** Which index is kept. */
export interface KeptIndex {
  readonly stamp: number
  /** The catalogue's when the index was laid out. */
  readonly catalogueVersion: number
}

const keptRow = z.object({ stamp: z.int(), catalogue_version: z.int() })
const countRow = z.object({ counted: z.int() })

/** The index that is kept with the database; undefined where none is, or one that this program cannot read. */
export function readKeptIndex(database: ReadableDatabase): KeptIndex | undefined {
  const kept = database.row(
    keptRow,
    'SELECT stamp, catalogue_version FROM model_index WHERE format = ?',
    layerFormat,
  )
  return kept && { stamp: kept.stamp, catalogueVersion: kept.catalogue_version }
}

/** All parts of the kept index with its stamp, in one statement, so that they are of one index. */
export function readKeptParts(
  database: ReadableDatabase,
): (KeptIndex & { readonly parts: LayerParts }) | undefined {
  const parts = new Map<string, Numbers>()
  let kept: KeptIndex | undefined
  for (const [stamp, catalogueVersion, part, bytesEach, bytes] of database.tuples<
    [number, number, string, number, Uint8Array]
  >(
    `SELECT stamp, catalogue_version, part, bytes_each, bytes
     FROM model_index JOIN model_index_part WHERE format = ?`,
    layerFormat,
  )) {
    kept = { stamp, catalogueVersion }
    parts.set(part, asNumbers(bytes, bytesEach))
  }
  return kept && { ...kept, parts }
}

/** How many models changed since the kept index was laid out. */
export function countChanges(database: ReadableDatabase): number {
  return database.row(countRow, 'SELECT count(*) AS counted FROM model_index_change')?.counted ?? 0
}

/** How many models the catalogue has. */
export function countCatalogueModels(database: ReadableDatabase): number {
  return database.row(countRow, 'SELECT count(*) AS counted FROM model')?.counted ?? 0
}

/**
 * Keeps these parts, which were laid out of the catalogue at a version, in the place of what was kept. What changed since
 * is forgotten where the version is still the same. False, and nothing is kept, where the catalogue moved on while no
 * index was there, so that nothing was noted.
 */
export function replaceKeptIndex(
  database: WritableDatabase,
  { parts, catalogueVersion }: { readonly parts: LayerParts; readonly catalogueVersion: number },
): boolean {
  const isCurrent = readCatalogueVersion(database) === catalogueVersion
  const stamp = database.row(keptRow, 'SELECT stamp, catalogue_version FROM model_index')?.stamp
  if (!isCurrent && stamp === undefined) return false
  if (isCurrent) database.run('DELETE FROM model_index_change')
  database.run('DELETE FROM model_index_part')
  database.run(
    `INSERT INTO model_index (only_row, stamp, format, catalogue_version) VALUES (1, ?1, ?2, ?3)
     ON CONFLICT DO UPDATE SET stamp = ?1, format = ?2, catalogue_version = ?3`,
    (stamp ?? 0) + 1,
    layerFormat,
    catalogueVersion,
  )
  for (const [part, numbers] of parts)
    database.run(
      'INSERT INTO model_index_part (part, bytes_each, bytes) VALUES (?, ?, ?)',
      part,
      numbers.BYTES_PER_ELEMENT,
      new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength),
    )
  return true
}

/** The bytes as they are, or copied where they do not begin at a place where such numbers may. */
function asNumbers(bytes: Uint8Array, bytesEach: number): Numbers {
  if (bytesEach === 1) return new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const { buffer, byteOffset, byteLength } =
    bytes.byteOffset % bytesEach === 0 ? bytes : Uint8Array.from(bytes)
  const count = byteLength / bytesEach
  return bytesEach === 2
    ? new Uint16Array(buffer, byteOffset, count)
    : new Uint32Array(buffer, byteOffset, count)
}
