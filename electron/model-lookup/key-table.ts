import { type Alphabet, encodeKey, isDigitCode, strangeCode } from './fold-characters.ts'
import { listTrigrams, trigramCodes } from './list-trigrams.ts'
import { type PostingLists, packPostings } from './posting-lists.ts'
import { FormCollector, type PrintedForms } from './printed-forms.ts'
import { ShareCounter } from './share-counter.ts'

/** Keys as printed numbers give them, by row: parallel lists, because a large catalogue has a million. */
export interface PrintedKeys {
  readonly keys: readonly string[]
  readonly printed: readonly string[]
  /** Each one's brand, as a number that the caller gives a meaning. */
  readonly brands: ArrayLike<number>
}

export type Numbers = Uint8Array | Uint16Array | Uint32Array

/**
 * Keys in flat arrays, in the order of their classes: keys that look alike stand together, so that one binary search
 * finds them, and the lists of positions stay ascending.
 */
export interface KeyTable {
  readonly alphabet: Alphabet
  readonly count: number
  /** The key at a position is `codes` from `start[position]` to `start[position + 1]`. */
  readonly start: Uint32Array
  readonly codes: Uint8Array
  readonly forms: PrintedForms
  readonly formOf: Numbers
  readonly brandOf: Numbers
  /** Positions by trigram. */
  readonly postings: PostingLists
  /** Keys with a character that has no code of its own, by position. */
  readonly strangeKeys: ReadonlyMap<number, string>
  /** Scratch for searches. */
  readonly counter: ShareCounter
}

/** The table of these keys, and which row stands at each of its positions. */
export function buildKeyTable(
  alphabet: Alphabet,
  { keys, printed, brands }: PrintedKeys,
): { readonly table: KeyTable; readonly rowAt: Uint32Array } {
  const rowAt = orderRows(alphabet, keys)
  const count = keys.length
  const start = new Uint32Array(count + 1)
  const formOf = new Uint32Array(count)
  const brandOf = new Uint32Array(count)
  const forms = new FormCollector()
  rowAt.forEach((row, position) => {
    const key = keys[row] ?? ''
    start[position + 1] = (start[position] ?? 0) + key.length
    formOf[position] = forms.numberOf(key, printed[row] ?? '')
    brandOf[position] = brands[row] ?? 0
  })
  const codes = new Uint8Array(start[count] ?? 0)
  const strangeKeys = new Map<number, string>()
  rowAt.forEach((row, position) => {
    const key = encodeKey(alphabet, keys[row] ?? '')
    codes.set(key, start[position])
    if (key.includes(strangeCode)) strangeKeys.set(position, keys[row] ?? '')
  })
  const table: KeyTable = {
    alphabet,
    count,
    start,
    codes,
    forms: forms.forms(),
    formOf: narrowest(formOf),
    brandOf: narrowest(brandOf),
    postings: postTrigrams(alphabet, start, codes),
    strangeKeys,
    counter: new ShareCounter(count),
  }
  return { table, rowAt }
}

/** The key at a position. */
export function keyAt({ alphabet, codes, start, strangeKeys }: KeyTable, position: number): string {
  const units = codes.subarray(start[position], start[position + 1])
  return (
    strangeKeys.get(position) ??
    String.fromCharCode(...Array.from(units, code => alphabet.unitOf[code] as number))
  )
}

/** Bit j: a printed segment begins at the key's character j: after a separator, or where letters and digits meet. */
export function segmentsAt({ codes, start, forms, formOf }: KeyTable, position: number): number {
  const from = start[position] as number
  const end = Math.min(start[position + 1] as number, from + 32)
  let marks = forms.separators[formOf[position] as number] as number
  let wasDigit = isDigitCode(codes[from] as number)
  for (let at = from + 1; at < end; at++) {
    const isDigit = isDigitCode(codes[at] as number)
    if (isDigit !== wasDigit) marks |= 1 << (at - from)
    wasDigit = isDigit
  }
  return marks >>> 0
}

/** The same numbers in as few bytes as they take. */
export function narrowest(numbers: Uint32Array): Numbers {
  let largest = 0
  for (const number of numbers) if (number > largest) largest = number
  if (largest < 1 << 8) return Uint8Array.from(numbers)
  return largest < 1 << 16 ? Uint16Array.from(numbers) : numbers
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

function postTrigrams(alphabet: Alphabet, start: Uint32Array, codes: Uint8Array): PostingLists {
  const count = start.length - 1
  let longest = 0
  for (let position = 0; position < count; position++)
    longest = Math.max(longest, (start[position + 1] as number) - (start[position] as number))
  return packPostings(trigramCodes, count, {
    mostOfOne: longest + 2,
    listsOf: (position, into) =>
      listTrigrams(alphabet, codes, start[position] as number, start[position + 1] as number, into),
  })
}
