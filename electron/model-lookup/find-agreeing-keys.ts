import { unreadableCode, wholeEdit } from './fold-characters.ts'
import type { KeyTable } from './key-table.ts'
import { listTrigrams } from './list-trigrams.ts'

/** A key that agrees with a text, save for characters that look alike. */
export interface AgreeingKey {
  readonly position: number
  /** Every readable character is the catalogue's own. */
  readonly isAsPrinted: boolean
}

/** The keys that are the text from end to end, `?` and lookalike characters taken as alike, in key order. */
export function findWholeKeys(table: KeyTable, query: Uint8Array): AgreeingKey[] {
  const positions = query.includes(unreadableCode)
    ? listPositionsToTry(table, query)
    : listPositionsOfClasses(table, query)
  return agreeingAmong(table, query, positions, (start, end) =>
    end - start === query.length ? agreementAt(table, query, start) : unlike,
  )
}

/** The keys that begin with the text, `?` and lookalike characters taken as alike, in key order. */
export function findBeginningKeys(table: KeyTable, query: Uint8Array): AgreeingKey[] {
  return agreeingAmong(table, query, listPositionsToTry(table, query), (start, end) =>
    end - start < query.length ? unlike : agreementAt(table, query, start),
  )
}

/** The keys that hold the text anywhere, `?` and lookalike characters taken as alike, in key order: all of them. */
export function findHoldingKeys(table: KeyTable, query: Uint8Array): AgreeingKey[] {
  return agreeingAmong(table, query, listPositionsToTry(table, query), (start, end) => {
    let best = unlike
    for (let at = start; at + query.length <= end && best < asPrinted; at++) {
      const agreement = agreementAt(table, query, at)
      if (agreement > best) best = agreement
    }
    return best
  })
}

const unlike = 0
const alike = 1
const asPrinted = 2

function agreeingAmong(
  { start }: KeyTable,
  query: Uint8Array,
  positions: Iterable<number>,
  agreementOf: (start: number, end: number) => number,
): AgreeingKey[] {
  const agreeing: AgreeingKey[] = []
  if (query.length === 0) return agreeing
  for (const position of positions) {
    const agreement = agreementOf(start[position] as number, start[position + 1] as number)
    if (agreement !== unlike) agreeing.push({ position, isAsPrinted: agreement === asPrinted })
  }
  return agreeing
}

function agreementAt({ alphabet, codes }: KeyTable, query: Uint8Array, from: number): number {
  let agreement = asPrinted
  for (let i = 0; i < query.length; i++) {
    const typed = query[i] as number
    const printed = codes[from + i] as number
    if (typed === printed || typed === unreadableCode) continue
    if ((alphabet.weights[(typed << 8) | printed] as number) >= wholeEdit) return unlike
    agreement = alike
  }
  return agreement
}

/** Any key that holds the text has each of its whole trigrams: the keys of the rarest are all that need a look. */
function listPositionsToTry(table: KeyTable, query: Uint8Array): Iterable<number> {
  const { alphabet, postingStart, postings, count } = table
  const own = new Uint16Array(query.length + 2)
  const found = listTrigrams(alphabet, query, 0, query.length, own)
  let rarest = -1
  let fewest = count
  for (let i = 0; i < found; i++) {
    const trigram = own[i] as number
    if (isPadded(trigram)) continue
    const length = (postingStart[trigram + 1] as number) - (postingStart[trigram] as number)
    if (length <= fewest) [fewest, rarest] = [length, trigram]
  }
  return rarest < 0 ? everyPosition(count) : postings.subarray(postingStart[rarest], postingStart[rarest + 1])
}

function isPadded(trigram: number): boolean {
  return trigram < 1 << 10 || (trigram & 31) === 0
}

function* everyPosition(count: number): Iterable<number> {
  for (let position = 0; position < count; position++) yield position
}

/** Keys with the same classes stand together. */
function* listPositionsOfClasses(table: KeyTable, query: Uint8Array): Iterable<number> {
  let low = 0
  let high = table.count
  while (low < high) {
    const middle = (low + high) >>> 1
    if (compareClasses(table, middle, query) < 0) low = middle + 1
    else high = middle
  }
  while (low < table.count && compareClasses(table, low, query) === 0) yield low++
}

function compareClasses({ alphabet, codes, start }: KeyTable, position: number, query: Uint8Array): number {
  const { classOf } = alphabet
  const from = start[position] as number
  const length = (start[position + 1] as number) - from
  const shorter = Math.min(length, query.length)
  for (let i = 0; i < shorter; i++) {
    const difference =
      (classOf[codes[from + i] as number] as number) - (classOf[query[i] as number] as number)
    if (difference !== 0) return difference
  }
  return length - query.length
}
