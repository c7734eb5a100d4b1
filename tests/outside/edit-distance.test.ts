import fc from 'fast-check'
import { distance as libraryDistance } from 'fastest-levenshtein'
import { expect, test } from 'vitest'
import { boundEdits } from '../../electron/model-lookup/bound-edits.ts'
import { createAlphabet, encodeKey } from '../../electron/model-lookup/fold-characters.ts'
import { levenshteinDistance, restrictedDistance } from '../builders/edit-distance.ts'

/** The distances that the look-up is checked against, themselves checked against what others have published. */

const check = (one: string, other: string, expected: { levenshtein: number; restricted: number }) => {
  expect(levenshteinDistance(one, other)).toBe(expected.levenshtein)
  expect(restrictedDistance(one, other)).toBe(expected.restricted)
  expect(restrictedDistance(other, one)).toBe(expected.restricted)
}

test.each([
  // Wagner and Fischer, "The String-to-String Correction Problem", Journal of the ACM 21 (1974), give the method; the
  // two pairs are the ones that textbooks use with it. Values from memory.
  ['KITTEN', 'SITTING', { levenshtein: 3, restricted: 3 }],
  ['SATURDAY', 'SUNDAY', { levenshtein: 3, restricted: 3 }],
  // Damerau, "A technique for computer detection and correction of spelling errors", Communications of the ACM 7
  // (1964): one swap of neighbours is one error. From memory.
  ['AB', 'BA', { levenshtein: 2, restricted: 1 }],
  // Boytsov, "Indexing methods for approximate dictionary searching", ACM Journal of Experimental Algorithmics 16
  // (2011): CA and ABC are 3 apart when no stretch is edited twice, and 2 without that restriction. From memory.
  ['CA', 'ABC', { levenshtein: 3, restricted: 3 }],
  ['', 'ABC', { levenshtein: 3, restricted: 3 }],
])('%s and %s are as far apart as published', check)

const plateCharacters = fc.string({ unit: fc.constantFrom(...'AC37X'), maxLength: 12 })

test('the plain distance agrees with an independent library (fastest-levenshtein)', () => {
  fc.assert(
    fc.property(plateCharacters, plateCharacters, (one, other) => {
      expect(levenshteinDistance(one, other)).toBe(libraryDistance(one, other))
      expect(restrictedDistance(one, other)).toBeLessThanOrEqual(libraryDistance(one, other))
    }),
  )
})

const unrelated = fc.tuple(plateCharacters, plateCharacters)
/** A key and what may be read of it: each character kept, dropped, doubled, or changed places with the next. */
const misread = fc
  .tuple(
    plateCharacters,
    fc.array(fc.constantFrom('keep', 'keep', 'drop', 'double', 'swap'), { minLength: 12, maxLength: 12 }),
  )
  .map(([key, steps]) => [misreadAs(key, steps), `XA${key}7`] as const)

function misreadAs(key: string, steps: readonly string[]): string {
  const read = [...key]
  for (let at = key.length - 1; at >= 0; at--) {
    if (steps[at] === 'drop') read.splice(at, 1)
    if (steps[at] === 'double') read.splice(at, 0, key.charAt(at))
    if (steps[at] === 'swap') read.splice(at, 2, ...read.slice(at, at + 2).reverse())
  }
  return read.join('')
}

test('the fast bound is the least restricted distance to any stretch of the key', () => {
  const alphabet = createAlphabet([])
  fc.assert(
    fc.property(fc.oneof(unrelated, misread), ([text, key]) => {
      fc.pre(text.length > 0)
      const bound = boundEdits(alphabet, encodeKey(alphabet, text))
      const codes = encodeKey(alphabet, key)
      expect(bound(codes, 0, codes.length)).toBe(leastToAnyStretch(text, key))
    }),
  )
})

function leastToAnyStretch(text: string, key: string): number {
  let least = text.length
  for (let from = 0; from <= key.length; from++)
    for (let to = from; to <= key.length; to++)
      least = Math.min(least, restrictedDistance(text, key.slice(from, to)))
  return least
}
