import type { Alphabet } from './fold-characters.ts'
import { listTrigrams, trigramCodes } from './list-trigrams.ts'

/** Keys as printed numbers give them, by row: parallel lists, because a large catalogue has a million. */
export interface PrintedKeys {
  readonly keys: readonly string[]
  readonly printed: readonly string[]
  readonly brands: Uint16Array
}

/**
 * Keys in flat arrays, in the order of their classes: keys that look alike stand together, so that one binary search
 * finds them, and the lists of positions stay ascending.
 */
export interface KeyTable {
  readonly alphabet: Alphabet
  readonly count: number
  /** Which of the given keys stands at each position. Given in key order, it is the order in which equals are shown. */
  readonly rowAt: Uint32Array
  /** The key at a position is `codes` from `start[position]` to `start[position + 1]`. */
  readonly start: Uint32Array
  readonly codes: Uint8Array
  readonly longest: number
  /** Bit j: a printed segment begins at character j: after a separator, or where letters and digits meet. */
  readonly segments: Uint32Array
  readonly brandOf: Uint16Array
  /** Positions whose key has trigram t, ascending: `postings` from `postingStart[t]` to `postingStart[t + 1]`. */
  readonly postingStart: Uint32Array
  readonly postings: Uint32Array
  /** Scratch of one count a position, all 0 between searches. */
  readonly shared: Uint8Array
}

/** The table of these keys. */
export function buildKeyTable(alphabet: Alphabet, printedKeys: PrintedKeys): KeyTable {
  const { keys, printed, brands } = printedKeys
  const rowAt = orderRows(alphabet, keys)
  const count = keys.length
  const start = new Uint32Array(count + 1)
  const segments = new Uint32Array(count)
  const brandOf = new Uint16Array(count)
  let longest = 0
  rowAt.forEach((row, position) => {
    const key = keys[row] ?? ''
    start[position + 1] = (start[position] ?? 0) + key.length
    segments[position] = markSegments(key, printed[row] ?? '')
    brandOf[position] = brands[row] ?? 0
    if (key.length > longest) longest = key.length
  })
  const codes = new Uint8Array(start[count] ?? 0)
  rowAt.forEach((row, position) => {
    encodeInto(codes, start[position] ?? 0, alphabet, keys[row] ?? '')
  })
  const shared = new Uint8Array(count)
  const keyed = { alphabet, count, rowAt, start, codes, longest, segments, brandOf, shared }
  return { ...keyed, ...postTrigrams(keyed) }
}

function encodeInto(codes: Uint8Array, from: number, { codeOf }: Alphabet, key: string): void {
  for (let at = 0; at < key.length; at++) codes[from + at] = codeOf[key.charCodeAt(at)] as number
}

/** Rows by their key's classes, then by key, then as given. The first ten classes are packed into one number, 5 bits each. */
function orderRows(alphabet: Alphabet, keys: readonly string[]): Uint32Array {
  const packed = new Float64Array(keys.length)
  keys.forEach((key, row) => {
    packed[row] = packClasses(alphabet, key, 0)
  })
  const rows = Uint32Array.from(keys, (_, row) => row)
  return rows.sort(
    (one, other) =>
      (packed[one] as number) - (packed[other] as number) ||
      compareLater(alphabet, keys[one] ?? '', keys[other] ?? '') ||
      one - other,
  )
}

const packedCharacters = 10

function packClasses({ codeOf, classOf }: Alphabet, key: string, from: number): number {
  let packed = 0
  for (let at = from; at < from + packedCharacters; at++)
    packed = packed * 32 + (at < key.length ? (classOf[codeOf[key.charCodeAt(at)] as number] as number) : 0)
  return packed
}

function compareLater(alphabet: Alphabet, one: string, other: string): number {
  const longest = Math.max(one.length, other.length)
  for (let from = packedCharacters; from < longest; from += packedCharacters) {
    const difference = packClasses(alphabet, one, from) - packClasses(alphabet, other, from)
    if (difference !== 0) return difference
  }
  return one < other ? -1 : one > other ? 1 : 0
}

/** A kept character of the number is the key's next one; anything else was a separator. Past 32 characters none is marked. */
function markSegments(key: string, printed: string): number {
  const text = printed.normalize('NFKC').toUpperCase()
  let marks = 0
  let at = 0
  let wasSeparator = false
  for (let i = 0; i < text.length && at < Math.min(key.length, 32); i++) {
    if (text.charCodeAt(i) !== key.charCodeAt(at)) {
      wasSeparator = true
      continue
    }
    const isBreak = wasSeparator || isDigitAt(key, at) !== isDigitAt(key, at - 1)
    if (at > 0 && isBreak) marks |= 1 << at
    wasSeparator = false
    at += 1
  }
  return marks >>> 0
}

function isDigitAt(key: string, at: number): boolean {
  const unit = key.charCodeAt(at)
  return unit >= 48 && unit <= 57
}

/** Counted once and filled once: each list has its exact length, one after the other. */
function postTrigrams(
  keyed: Omit<KeyTable, 'postingStart' | 'postings'>,
): Pick<KeyTable, 'postingStart' | 'postings'> {
  const { alphabet, count, start, codes, longest } = keyed
  const postingStart = new Uint32Array(trigramCodes + 1)
  const own = new Uint16Array(longest + 2)
  for (let position = 0; position < count; position++) {
    const found = listTrigrams(alphabet, codes, start[position] as number, start[position + 1] as number, own)
    for (let i = 0; i < found; i++) (postingStart[(own[i] as number) + 1] as number)++
  }
  for (let t = 0; t < trigramCodes; t++)
    postingStart[t + 1] = (postingStart[t + 1] as number) + (postingStart[t] as number)
  const postings = new Uint32Array(postingStart[trigramCodes] as number)
  const next = postingStart.slice()
  for (let position = 0; position < count; position++) {
    const found = listTrigrams(alphabet, codes, start[position] as number, start[position + 1] as number, own)
    for (let i = 0; i < found; i++) postings[(next[own[i] as number] as number)++] = position
  }
  return { postingStart, postings }
}
