import { describe, expect, test } from 'vitest'
import { findSeparator } from '../../../../electron/catalogue/reading/find-separator.ts'

describe('what parts the cells', () => {
  const cases: readonly (readonly [string, string, string, string])[] = [
    ['semicolons beside decimal commas', 'a;b;c\n1;2,50;x\n2;3,10;y\n', ';', 'certain'],
    ['commas alone', 'a,b\n1,2\n', ',', 'certain'],
    ['tabs beside commas in words', 'a\tb\n1\tpump, small\n2\tpump\n', '\t', 'certain'],
    ['bars', 'a|b\n1|2\n', '|', 'certain'],
    ['separators in quotes count for nothing', 'a,b\n"x;y;z",1\n"x;y",2\n', ',', 'certain'],
    ['one column reads alike with any', 'a\n1\n2\n', ',', 'certain'],
    ['two that part every row alike', 'a,b;c\n1,2;3\n', ',', 'likely'],
    ['two of which neither parts every row alike', 'a;b,c\n1;2;3,4,5\n', ',', 'open'],
  ]
  test.each(cases)('%s', (_title, text, separator, certainty) =>
    expect(findSeparator(text, { isWhole: true })).toMatchObject({ separator, certainty }),
  )
})
