import { expect, test } from 'vitest'
import { asSearched, narrowModels } from '../../../../electron/catalogue/model-lists/narrow-models.ts'

const models = [
  { brand: 'Ostrel', modelNumber: 'OW 4512/01', applianceType: 'washer', conditions: [] },
  { brand: 'Ostrel', modelNumber: 'OD 4512/01', applianceType: 'dishwasher', conditions: [] },
  { brand: 'Brennick', modelNumber: '00-4821', applianceType: 'dryer', conditions: ['made 2010 on'] },
].map(asSearched)

const check = (words: string, left: readonly string[]) =>
  expect(narrowModels(models, words).map(({ modelNumber }) => modelNumber)).toEqual(left)

test.each<[string, string, readonly string[]]>([
  ['nothing typed leaves the list as it is', ' ', ['OW 4512/01', 'OD 4512/01', '00-4821']],
  ['separators and case do not count', 'ow4512-0', ['OW 4512/01']],
  ['a sign alone narrows nothing', '/', ['OW 4512/01', 'OD 4512/01', '00-4821']],
  ['any stretch of the number is found', '12/01', ['OW 4512/01', 'OD 4512/01']],
  ['zeros in front are part of the number', '0048', ['00-4821']],
  ['a brand by its beginning', 'brenn', ['00-4821']],
  ['a type', 'dryer', ['00-4821']],
  ['every word must be found', 'ostrel dish', ['OD 4512/01']],
  ['a word never runs from the number into the brand', '4821brennick', []],
  ['what stands nowhere leaves nothing', 'made', []],
])('%s', (_title, words, left) => check(words, left))
