import { readCatalogueVersion } from '../catalogue/catalogue-state-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { holdsEveryCharacter } from './fold-characters.ts'
import { countModels, indexModels, joinLayers, type ModelIndex } from './index-models.ts'
import {
  countCatalogueModels,
  countChanges,
  type KeptIndex,
  readKeptIndex,
  readKeptParts,
} from './kept-index-queries.ts'
import { layOutModels, type ModelLayer } from './lay-out-models.ts'
import { readBrands, readCatalogueNumbers, readChangedNumbers } from './model-index-queries.ts'
import { unpackLayer } from './pack-layer.ts'

interface Held {
  readonly index: ModelIndex
  /** The kept layer that it rests on, where it does. */
  readonly kept: KeptLayer | undefined
}

interface KeptLayer extends KeptIndex {
  readonly layer: ModelLayer
}

const held = new WeakMap<ReadableDatabase, Held>()

/** From this many changes on, an index is laid out anew rather than read beside the kept one. */
export const mostChanges = 50_000

/**
 * The index of the catalogue as it is now: held with the database's handle, and read or laid out anew when the
 * catalogue's version moved, be it by a load of this program or of another.
 */
export function currentModelIndex(database: ReadableDatabase): ModelIndex {
  const before = held.get(database)
  if (before !== undefined && isCurrent(database, before.index)) return before.index
  for (;;) {
    const stamp = readKeptIndex(database)?.stamp
    const read = readIndex(database, before?.kept)
    held.set(database, read)
    // Another program may load, and another index be kept, between two of the statements.
    if (isCurrent(database, read.index) && readKeptIndex(database)?.stamp === stamp) return read.index
  }
}

/** Whether the index of the catalogue as it is now is at hand. */
export function holdsCurrentModelIndex(database: ReadableDatabase): boolean {
  const before = held.get(database)
  return before !== undefined && isCurrent(database, before.index)
}

function isCurrent(database: ReadableDatabase, { catalogueVersion }: ModelIndex): boolean {
  return readCatalogueVersion(database) === catalogueVersion
}

function readIndex(database: ReadableDatabase, before: KeptLayer | undefined): Held {
  return (
    readAboveKept(database, before) ?? { index: indexModels(readCatalogueNumbers(database)), kept: undefined }
  )
}

/** The kept index with what changed since above it; undefined where none is kept, or it is no good basis any more. */
function readAboveKept(database: ReadableDatabase, before: KeptLayer | undefined): Held | undefined {
  const catalogueVersion = readCatalogueVersion(database)
  const kept = readKeptLayer(database, before)
  if (kept === undefined || countChanges(database) > mostChanges) return undefined
  const brands = readBrands(database)
  if (kept.catalogueVersion === catalogueVersion)
    return { index: joinLayers({ catalogueVersion, brands, base: kept.layer }), kept }
  const { changed, ...numbers } = readChangedNumbers(database)
  const base = kept.layer
  const layer = layOutModels(numbers, base.numbers.alphabet)
  const known = new Set(brands)
  if (!base.brands.every(brand => known.has(brand)) || !holdsEveryCharacter(layer.numbers.alphabet))
    return undefined
  const index = joinLayers({
    catalogueVersion,
    brands,
    base,
    ...(changed.size > 0 && { above: { layer, changed } }),
  })
  // Whatever went unnoticed, a wrong count of models betrays it.
  return countModels(index) === countCatalogueModels(database) ? { index, kept } : undefined
}

function readKeptLayer(database: ReadableDatabase, before: KeptLayer | undefined): KeptLayer | undefined {
  const stamp = readKeptIndex(database)?.stamp
  if (stamp === undefined) return undefined
  if (before?.stamp === stamp) return before
  const read = readKeptParts(database)
  return (
    read && { stamp: read.stamp, catalogueVersion: read.catalogueVersion, layer: unpackLayer(read.parts) }
  )
}
