import { expect, test } from 'vitest'
import { wordModels } from '../../../renderer/components/word-models.ts'

const page = (count: number, ...models: readonly number[]) => ({
  count,
  matching: models.reduce((sum, some) => sum + some, 0),
  brands: models.map((some, at) => ({ brand: ['Ostrel', 'Brennick'][at] ?? '', models: some })),
  models: [],
})

test.each([
  [page(6100, 100, 49), '12', '149 of 6,100 models match “12”, of 2 brands.'],
  [page(6100, 1), '1234', '1 of 6,100 models matches “1234”, of Ostrel.'],
  [page(1), 'x', 'None of 1 model matches “x”. Type less of it.'],
  [page(6100), 'xyz', 'None of 6,100 models matches “xyz”. Type less of it.'],
])('how many the words leave is said in words: %#', (given, words, expected) => {
  expect(wordModels(given, words)).toBe(expected)
})
