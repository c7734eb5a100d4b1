import { unreadableCode, wholeEdit } from './fold-characters.ts'
import type { KeyTable } from './key-table.ts'
import type { LayeredKeys } from './layered-keys.ts'
import { listTrigrams } from './list-trigrams.ts'
import { postingBytes, readPostings } from './posting-lists.ts'

/** A key that agrees with a text, save for characters that look alike. */
export interface AgreeingKey {
  readonly position: number
  /** Every readable character is the catalogue's own. */
  readonly isAsPrinted: boolean
}

/** The keys that are the text from end to end, `?` and lookalike characters taken as alike. */
export function findWholeKeys(keys: LayeredKeys, query: Uint8Array): AgreeingKey[] {
  const listPlaces = query.includes(unreadableCode) ? listPlacesToTry : listPlacesOfClasses
  return agreeingAmong(keys, query, listPlaces, (table, start, end) =>
    end - start === query.length ? agreementAt(table, query, start) : unlike,
  )
}

/** The keys that begin with the text, `?` and lookalike characters taken as alike. */
export function findBeginningKeys(keys: LayeredKeys, query: Uint8Array): AgreeingKey[] {
  return agreeingAmong(keys, query, listPlacesToTry, (table, start, end) =>
    end - start < query.length ? unlike : agreementAt(table, query, start),
  )
}

/** The keys that hold the text anywhere, `?` and lookalike characters taken as alike: all of them. */
export function findHoldingKeys(keys: LayeredKeys, query: Uint8Array): AgreeingKey[] {
  return agreeingAmong(keys, query, listPlacesToTry, (table, start, end) => {
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
  { layers }: LayeredKeys,
  query: Uint8Array,
  listPlaces: (table: KeyTable, query: Uint8Array) => Iterable<number>,
  agreementOf: (table: KeyTable, start: number, end: number) => number,
): AgreeingKey[] {
  const agreeing: AgreeingKey[] = []
  if (query.length === 0) return agreeing
  for (const { table, from, gone } of layers)
    for (const place of listPlaces(table, query)) {
      if (gone?.[place] === 1) continue
      const agreement = agreementOf(table, table.start[place] as number, table.start[place + 1] as number)
      if (agreement !== unlike)
        agreeing.push({ position: from + place, isAsPrinted: agreement === asPrinted })
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
function listPlacesToTry(table: KeyTable, query: Uint8Array): Iterable<number> {
  const own = new Uint16Array(query.length + 2)
  const found = listTrigrams(table.alphabet, query, 0, query.length, own)
  let rarest = -1
  let fewest = Infinity
  for (let i = 0; i < found; i++) {
    const trigram = own[i] as number
    if (isPadded(trigram)) continue
    const length = postingBytes(table.postings, trigram)
    if (length <= fewest) [fewest, rarest] = [length, trigram]
  }
  return rarest < 0 ? everyPlace(table.count) : readPostings(table.postings, rarest)
}

function isPadded(trigram: number): boolean {
  return trigram < 1 << 10 || (trigram & 31) === 0
}

function* everyPlace(count: number): Iterable<number> {
  for (let place = 0; place < count; place++) yield place
}

/** Keys with the same classes stand together. */
function* listPlacesOfClasses(table: KeyTable, query: Uint8Array): Iterable<number> {
  let low = 0
  let high = table.count
  while (low < high) {
    const middle = (low + high) >>> 1
    if (compareClasses(table, middle, query) < 0) low = middle + 1
    else high = middle
  }
  while (low < table.count && compareClasses(table, low, query) === 0) yield low++
}

function compareClasses({ alphabet, codes, start }: KeyTable, place: number, query: Uint8Array): number {
  const { classOf } = alphabet
  const from = start[place] as number
  const length = (start[place + 1] as number) - from
  const shorter = Math.min(length, query.length)
  for (let i = 0; i < shorter; i++) {
    const difference =
      (classOf[codes[from + i] as number] as number) - (classOf[query[i] as number] as number)
    if (difference !== 0) return difference
  }
  return length - query.length
}
