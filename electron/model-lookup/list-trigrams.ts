import { type Alphabet, unreadableCode } from './fold-characters.ts'

/** Three classes of five bits each. Class 0 pads both ends, so that a shared beginning or end counts too. */
export const trigramCodes = 1 << 15

/**
 * Writes the distinct trigrams of the classes from `from` to `to`, padded by one at each end, into `into` and says how
 * many. One with an unreadable character tells nothing and is left out.
 */
export function listTrigrams(
  { classOf }: Alphabet,
  codes: Uint8Array,
  from: number,
  to: number,
  into: Uint16Array,
): number {
  let found = 0
  let before = 0
  let here = classAt(classOf, codes, from)
  for (let at = from + 1; at <= to; at++) {
    const after = at < to ? classAt(classOf, codes, at) : 0
    if (before !== unreadableClass && here !== unreadableClass && after !== unreadableClass) {
      const trigram = (before << 10) | (here << 5) | after
      if (!isAmong(into, found, trigram)) into[found++] = trigram
    }
    before = here
    here = after
  }
  return found
}

const unreadableClass = -1

function classAt(classOf: Uint8Array, codes: Uint8Array, at: number): number {
  const code = codes[at] as number
  return code === unreadableCode ? unreadableClass : (classOf[code] as number)
}

/** A key has about ten trigrams: looking through them beats any set. */
function isAmong(list: Uint16Array, length: number, value: number): boolean {
  for (let i = 0; i < length; i++) if (list[i] === value) return true
  return false
}
