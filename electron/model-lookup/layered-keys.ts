import type { Alphabet } from './fold-characters.ts'
import { type KeyTable, keyAt, segmentsAt } from './key-table.ts'

/**
 * Keys in layers: the catalogue as it was when the index was laid out, and above it what changed since. A position
 * counts through all layers.
 */
export interface LayeredKeys {
  /** That of every layer. */
  readonly alphabet: Alphabet
  readonly layers: readonly KeyLayer[]
}

export interface KeyLayer {
  readonly table: KeyTable
  /** The position of the table's first key. */
  readonly from: number
  /** By place in the table: 1 where the key no longer counts, because it changed or went. */
  readonly gone: Uint8Array | undefined
}

/** The layer that a position is in. */
export function layerAt<Layer extends { readonly from: number }>(
  layers: readonly Layer[],
  position: number,
): Layer {
  let found = layers[0]
  for (const layer of layers) if (layer.from <= position) found = layer
  if (found === undefined) throw new Error(`a position is in some layer, but ${position} is in none`)
  return found
}

/** The key at a position. */
export function layeredKeyAt({ layers }: LayeredKeys, position: number): string {
  const { table, from } = layerAt(layers, position)
  return keyAt(table, position - from)
}

/** The printed segments of the key at a position. */
export function layeredSegmentsAt({ layers }: LayeredKeys, position: number): number {
  const { table, from } = layerAt(layers, position)
  return segmentsAt(table, position - from)
}

/** How many keys are in all layers, gone ones included. */
export function countKeys({ layers }: LayeredKeys): number {
  return layers.reduce((sum, { table }) => sum + table.count, 0)
}

/** The order of two keys by their characters, whichever layers they are in. */
export function compareKeys({ alphabet, layers }: LayeredKeys, one: number, other: number): number {
  const first = layerAt(layers, one)
  const second = layerAt(layers, other)
  return compareKeysOf(
    { alphabet, table: first.table, place: one - first.from },
    { table: second.table, place: other - second.from },
  )
}

function compareKeysOf(
  { alphabet, table, place }: { alphabet: Alphabet; table: KeyTable; place: number },
  other: { table: KeyTable; place: number },
): number {
  if (table.strangeKeys.has(place) || other.table.strangeKeys.has(other.place))
    return compareTexts(keyAt(table, place), keyAt(other.table, other.place))
  const from = table.start[place] as number
  const otherFrom = other.table.start[other.place] as number
  const length = (table.start[place + 1] as number) - from
  const otherLength = (other.table.start[other.place + 1] as number) - otherFrom
  for (let at = 0; at < Math.min(length, otherLength); at++) {
    const code = table.codes[from + at] as number
    const otherCode = other.table.codes[otherFrom + at] as number
    if (code !== otherCode) return (alphabet.unitOf[code] as number) - (alphabet.unitOf[otherCode] as number)
  }
  return length - otherLength
}

function compareTexts(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0
}
