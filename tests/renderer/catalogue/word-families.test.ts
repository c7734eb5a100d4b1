import { expect, test } from 'vitest'
import { wordFamilies } from '../../../renderer/catalogue/word-families.ts'

test.each([
  [189, 189, '', '189 part families.'],
  [4021, 12, 'pump', '12 of 4,021 part families match “pump”.'],
  [189, 1, 'float', '1 of 189 part families matches “float”.'],
  [1, 0, 'zz', 'None of 1 part family matches “zz”. Type less of it.'],
  [0, 0, '', 'There are no part families yet. Load families.csv on the screen Lists.'],
])('of %i families %i are left by “%s”: said in words', (count, matching, words, expected) => {
  expect(wordFamilies({ count, matching }, words)).toBe(expected)
})
