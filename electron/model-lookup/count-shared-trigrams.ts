import type { KeyTable } from './key-table.ts'
import { listTrigrams } from './list-trigrams.ts'

export interface SharedTrigrams {
  /** Positions of the keys that share enough, those that share most first, then in order. */
  readonly positions: Uint32Array
  /** How many of the text's trigrams each of them lacks, in the same order. */
  readonly lacking: Uint8Array
  /** What every other key lacks at the least. */
  readonly othersLack: number
}

/** Which keys share enough trigrams with a text to be worth laying beside it. */
export function countSharedTrigrams(table: KeyTable, text: Uint8Array): SharedTrigrams {
  const own = new Uint16Array(text.length + 2)
  const wanted = own.subarray(
    0,
    Math.min(mostTrigrams, listTrigrams(table.alphabet, text, 0, text.length, own)),
  )
  const fewest = fewestShared(wanted.length)
  const touched = countUp(table, wanted, fewest)
  const sorted = sortByCount(table.shared, touched, wanted.length)
  clear(table, wanted)
  return { ...sorted, othersLack: wanted.length - fewest + 1 }
}

/** Counts are bytes. */
const mostTrigrams = 255

/** Two slips break at most six or seven of a text's trigrams; what shares fewer than the rest is no likely reading. */
function fewestShared(wanted: number): number {
  if (wanted >= 11) return 4
  if (wanted >= 10) return 3
  return wanted >= 7 ? 2 : 1
}

function countUp(
  { postingStart, postings, shared }: KeyTable,
  wanted: Uint16Array,
  fewest: number,
): number[] {
  const touched: number[] = []
  for (const trigram of wanted) {
    const end = postingStart[trigram + 1] as number
    for (let at = postingStart[trigram] as number; at < end; at++) {
      const position = postings[at] as number
      const count = (shared[position] as number) + 1
      shared[position] = count
      if (count === fewest) touched.push(position)
    }
  }
  return touched
}

/** By how much they share, then by position: one pass to count, one to place. */
function sortByCount(shared: Uint8Array, touched: number[], most: number) {
  const next = new Uint32Array(most + 2)
  for (const position of touched) (next[most - (shared[position] as number) + 1] as number)++
  for (let lacking = 0; lacking <= most; lacking++)
    next[lacking + 1] = (next[lacking + 1] as number) + (next[lacking] as number)
  const positions = new Uint32Array(touched.length)
  const lacking = new Uint8Array(touched.length)
  for (const position of touched) {
    const lacks = most - (shared[position] as number)
    const place = (next[lacks] as number)++
    positions[place] = position
    lacking[place] = lacks
  }
  return { positions, lacking }
}

function clear({ postingStart, postings, shared }: KeyTable, wanted: Uint16Array): void {
  for (const trigram of wanted) {
    const end = postingStart[trigram + 1] as number
    for (let at = postingStart[trigram] as number; at < end; at++) shared[postings[at] as number] = 0
  }
}
