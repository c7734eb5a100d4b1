import type { KeyTable } from './key-table.ts'
import type { KeyLayer, LayeredKeys } from './layered-keys.ts'
import { listTrigrams } from './list-trigrams.ts'
import { postingBytes } from './posting-lists.ts'

/** Keys that share much with a text, in sets by how much they lack of it. */
export interface SharedTrigrams {
  /** By how many trigrams they lack: the positions of the keys, gone ones left out. */
  readonly lacking: readonly Uint32Array[]
  /** What every key in no set lacks at the least. */
  readonly othersLack: number
}

/** The distinct trigrams of a text; counts are bytes, so a text with more has the rest left out. */
export function trigramsOf({ alphabet }: LayeredKeys, text: Uint8Array): Uint16Array {
  const own = new Uint16Array(text.length + 2)
  return own.subarray(0, Math.min(mostTrigrams, listTrigrams(alphabet, text, 0, text.length, own)))
}

const mostTrigrams = 255

/** The keys that lack no more than so many of some trigrams. */
export function findSharing(keys: LayeredKeys, trigrams: Uint16Array, mostLacking: number): SharedTrigrams {
  const most = trigrams.length
  const fewest = Math.max(1, most - mostLacking)
  const sets = keys.layers.map(layer => {
    layer.table.counter.begin(most)
    const reached = countUp(layer.table, trigrams, fewest)
    return partByCount(layer, places.subarray(0, reached), { most, fewest })
  })
  return { lacking: sets.reduce(joinSets), othersLack: Math.max(0, most - fewest) + 1 }
}

/** Scratch, as long as the largest table. */
let places = new Uint32Array(0)

/** Counts, and notes in `places` which keys reach `fewest`; says how many. The gaps are read as `readPostings` does. */
function countUp({ postings, counter, count }: KeyTable, trigrams: Uint16Array, fewest: number): number {
  if (places.length < count) places = new Uint32Array(count)
  const { start, bytes } = postings
  const { counts, base } = counter
  const enough = base + fewest
  const reached = places
  let found = 0
  for (let i = 0; i < trigrams.length; i++) {
    const trigram = trigrams[i] as number
    const end = start[trigram + 1] as number
    let place = -1
    for (let at = start[trigram] as number; at < end; ) {
      let gap = bytes[at++] as number
      if (gap > 127) {
        gap &= 127
        let shift = 7
        let more = bytes[at++] as number
        while (more > 127) {
          gap |= (more & 127) << shift
          shift += 7
          more = bytes[at++] as number
        }
        gap |= more << shift
      }
      place += gap + 1
      const before = counts[place] as number
      const shares = before < base ? base + 1 : before + 1
      counts[place] = shares
      if (shares === enough) reached[found++] = place
    }
  }
  return found
}

/** One set for each count from the most down: once through to measure them, once to fill them. */
function partByCount(
  { table, from, gone }: KeyLayer,
  reached: Uint32Array,
  { most, fewest }: { readonly most: number; readonly fewest: number },
): Uint32Array[] {
  const { counts, base } = table.counter
  const top = base + most
  const sizes = new Uint32Array(Math.max(0, most - fewest + 1))
  for (let i = 0; i < reached.length; i++) (sizes[top - (counts[reached[i] as number] as number)] as number)++
  const sets = Array.from(sizes, size => new Uint32Array(size))
  const filled = new Uint32Array(sets.length)
  for (let i = 0; i < reached.length; i++) {
    const place = reached[i] as number
    if (gone !== undefined && gone[place] === 1) continue
    const lacks = top - (counts[place] as number)
    const set = sets[lacks] as Uint32Array
    set[(filled[lacks] as number)++] = from + place
  }
  return gone === undefined ? sets : sets.map((set, lacks) => set.subarray(0, filled[lacks]))
}

function joinSets(first: readonly Uint32Array[], second: readonly Uint32Array[]): Uint32Array[] {
  return first.map((set, lacks) => {
    const other = second[lacks] ?? new Uint32Array(0)
    const joined = new Uint32Array(set.length + other.length)
    joined.set(set)
    joined.set(other, set.length)
    return joined
  })
}

/**
 * The trigrams without the commonest, as far as these take most of the counting and at least `fewest` are left: a key
 * lacks no fewer of all than of some, so that none is missed for it.
 */
export function leaveOutCommonest(
  { layers }: LayeredKeys,
  trigrams: Uint16Array,
  fewest: number,
): Uint16Array {
  const lengthOf = (trigram: number) =>
    layers.reduce((sum, { table }) => sum + postingBytes(table.postings, trigram), 0)
  const lengths = Array.from(trigrams, lengthOf)
  const left = new Set(trigrams.keys())
  let total = lengths.reduce((sum, length) => sum + length, 0)
  while (left.size > fewest) {
    let longest = -1
    for (const at of left)
      if (longest < 0 || (lengths[at] as number) > (lengths[longest] as number)) longest = at
    const length = lengths[longest] as number
    if (length < worthLeavingOut || length * mostShares < total) break
    left.delete(longest)
    total -= length
  }
  return trigrams.filter((_, at) => left.has(at))
}

/** Bytes of a list below which counting takes no time that anybody notices. */
const worthLeavingOut = 20_000
/** A list is left out where it is more than this part of what is to be counted. */
const mostShares = 3
