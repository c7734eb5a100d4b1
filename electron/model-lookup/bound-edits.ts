import { type Alphabet, unreadableCode } from './fold-characters.ts'

/** No more than the edits between a text and any stretch of `codes` between two places. */
export type EditBound = (codes: Uint8Array, from: number, to: number) => number

/**
 * Hyyrö's bit-parallel restricted Damerau distance of a text inside a longer key, lookalikes taken as alike: a column
 * of the edit table in one machine word (Hyyrö, "A bit-vector algorithm for computing Levenshtein and Damerau edit
 * distances", 2003; cited from memory). Never more than the true distance, so whatever it rules out is out. Past 31
 * characters a column no longer fits the word and the bound is 0: slower, and still right.
 */
export function boundEdits({ classOf }: Alphabet, text: Uint8Array): EditBound {
  const length = text.length
  if (length === 0 || length > wordLength) return () => 0
  const placesOf = markPlaces(classOf, text)
  const top = 1 << (length - 1)
  return (codes, from, to) => {
    let up = -1
    let down = 0
    let diagonal = 0
    let lastMatches = 0
    let edits = length
    let fewest = length
    for (let at = from; at < to; at++) {
      const matches = placesOf[codes[at] as number] as number
      const swaps = ((~diagonal & matches) << 1) & lastMatches
      diagonal = (((matches & up) + up) ^ up) | matches | down | swaps
      const right = down | ~(diagonal | up)
      const rightDown = diagonal & up
      if (right & top) edits++
      if (rightDown & top && --edits < fewest) fewest = edits
      up = (rightDown << 1) | ~(diagonal | (right << 1))
      down = (right << 1) & diagonal
      lastMatches = matches
    }
    return fewest
  }
}

const wordLength = 31

/** By code of the catalogue: at which places of the text it, or a character that looks like it, stands. */
function markPlaces(classOf: Uint8Array, text: Uint8Array): Int32Array {
  const ofClass = new Int32Array(32)
  let unread = 0
  text.forEach((code, place) => {
    if (code === unreadableCode) unread |= 1 << place
    else (ofClass[classOf[code] as number] as number) |= 1 << place
  })
  const placesOf = new Int32Array(classOf.length)
  for (let code = 0; code < placesOf.length; code++)
    placesOf[code] = (ofClass[classOf[code] as number] as number) | unread
  return placesOf
}
