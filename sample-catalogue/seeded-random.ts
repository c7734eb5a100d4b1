/** A stream of numbers that is the same on every machine and on every run. */
export type SeededRandom = {
  /** At least 0 and below 1. */
  readonly next: () => number
  /** A whole number from `low` to `high`, both included. */
  readonly between: (low: number, high: number) => number
  readonly chance: (probability: number) => boolean
  readonly pick: <Item>(list: readonly Item[]) => Item
}

/** A stream of its own for each subject, so that a change to one file of the sample leaves the others as they were. */
export function seededRandom(subject: string): SeededRandom {
  let state = hashText(subject)
  const next = () => {
    // Mulberry32: public domain, 32 bits of state, ample for a sample.
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
  const between = (low: number, high: number) => low + Math.floor(next() * (high - low + 1))
  return {
    next,
    between,
    chance: probability => next() < probability,
    pick: list => itemAt(list, between(0, list.length - 1)),
  }
}

/** FNV-1a over the characters: an even spread of whole numbers from 0 to 2^32 - 1. */
export function hashText(text: string): number {
  let hash = 0x811c9dc5
  for (let index = 0; index < text.length; index += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193)
  }
  return hash >>> 0
}

/** The item at a place, counted round and round: place 7 of five items is the third. */
export function itemAt<Item>(list: readonly Item[], place: number): Item {
  const item = list[place % list.length]
  if (item === undefined) throw new Error(`a list of ${list.length} items has nothing at place ${place}`)
  return item
}
