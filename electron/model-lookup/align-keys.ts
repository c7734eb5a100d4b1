import { otherKind, unreadableCode } from './fold-characters.ts'
import { type KeyTable, segmentsAt } from './key-table.ts'

/**
 * What each way of misreading costs; `wholeEdit` is one full character; what one taken for
 * another costs stands with the lookalikes. Data, weighed on damaged plates of many kinds: a
 * suffix that was left out is the commonest of all and the cheapest, a letter for a digit the dearest single slip.
 */
export const alignmentCosts = {
  /** A character that the catalogue does not have; the same one typed twice. */
  added: 16,
  doubled: 12,
  /** A character that was not typed. */
  missing: 14,
  /** Two neighbours the wrong way round. */
  swapped: 14,
  /** The head or the tail of the number was not given: once, and for each character of it. */
  headCut: 6,
  headCharacter: 3,
  tailCut: 5,
  tailCharacter: 2,
  /** Off either cut where a printed segment begins: people stop reading there. */
  cutAtSegment: 2,
  /** A character marked as unreadable. */
  unreadable: 2,
} as const

/** The dearest single slip and the cheapest that folding does not hide. */
export const dearestSlip = otherKind
export const cheapestSlip = alignmentCosts.doubled

/**
 * The least cost of having read the text where the catalogue has the key at a position: a restricted Damerau alignment
 * with weights, the key's head and tail cheap to leave out. Answers `limit` as soon as the cost cannot be below it.
 */
export function alignCost(table: KeyTable, text: Uint8Array, position: number, limit: number): number {
  const { codes, start } = table
  const { weights } = table.alphabet
  const from = start[position] as number
  const length = (start[position + 1] as number) - from
  const marks = segmentsAt(table, position)
  const read = text.length
  if (length + 1 > rowLength) growRows(length + 1)
  let [before, last, row] = rows
  last[0] = 0
  for (let at = 1; at <= length; at++) last[at] = headCost(at, marks)
  for (let place = 1; place <= read; place++) {
    const typed = text[place - 1] as number
    const previous = place > 1 ? (text[place - 2] as number) : -1
    const extra = typed === previous ? doubled : added
    let left = (last[0] as number) + extra
    row[0] = left
    let least = left
    let printedBefore = -1
    for (let at = 1; at <= length; at++) {
      const printed = codes[from + at - 1] as number
      let cost = last[at - 1] as number
      if (typed === unreadableCode) cost += unreadable
      else if (typed !== printed) cost += weights[(typed << 8) | printed] as number
      const withExtra = (last[at] as number) + extra
      if (withExtra < cost) cost = withExtra
      if (left + missing < cost) cost = left + missing
      if (printed === previous && typed === printedBefore && typed !== previous) {
        const withSwap = (before[at - 2] as number) + swapped
        if (withSwap < cost) cost = withSwap
      }
      row[at] = cost
      left = cost
      if (cost < least) least = cost
      printedBefore = printed
    }
    if (least >= limit) return limit
    const spare = before
    before = last
    last = row
    row = spare
  }
  let best = Math.min(limit, last[length] as number)
  for (let at = 1; at < length; at++) {
    const withCut = (last[at] as number) + tailCost(length - at, at, marks)
    if (withCut < best) best = withCut
  }
  return best
}

/** Of leaving out the key's first characters. */
export function headCost(characters: number, marks: number): number {
  if (characters === 0) return 0
  return headCut + headCharacter * characters - atSegment(characters, marks)
}

/** Of leaving out the key's last characters, from a place on. */
export function tailCost(characters: number, place: number, marks: number): number {
  if (characters === 0) return 0
  return tailCut + tailCharacter * characters - atSegment(place, marks)
}

function atSegment(place: number, marks: number): number {
  return place < 32 && (marks >>> place) & 1 ? cutAtSegment : 0
}

const {
  added,
  doubled,
  missing,
  swapped,
  headCut,
  headCharacter,
  tailCut,
  tailCharacter,
  cutAtSegment,
  unreadable,
} = alignmentCosts

/** Kept between calls: an alignment runs thousands of times a question and must not allocate. */
let rowLength = 64
let rows = newRows()

function growRows(length: number): void {
  rowLength = length * 2
  rows = newRows()
}

function newRows(): [Int32Array, Int32Array, Int32Array] {
  return [new Int32Array(rowLength), new Int32Array(rowLength), new Int32Array(rowLength)]
}
