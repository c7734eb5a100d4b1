import { expect, test } from 'vitest'
import { nextCandidate } from '../../../renderer/counter/next-candidate.ts'
import { makeCandidate } from '../../builders/model-candidate.ts'

const [first, second, third] = ['A1', 'A2', 'A3'].map(number => makeCandidate(number)) as [
  ReturnType<typeof makeCandidate>,
  ReturnType<typeof makeCandidate>,
  ReturnType<typeof makeCandidate>,
]
const all = [first, second, third]

test('from nowhere, down leads to the best and up to the last', () => {
  expect(nextCandidate(all, null, 'ArrowDown')).toBe(first)
  expect(nextCandidate(all, null, 'ArrowUp')).toBe(third)
})

test('the arrows go one on and stop at the ends', () => {
  expect(nextCandidate(all, first, 'ArrowDown')).toBe(second)
  expect(nextCandidate(all, third, 'ArrowDown')).toBe(third)
  expect(nextCandidate(all, first, 'ArrowUp')).toBe(first)
})

test('without models there is nowhere to go', () => {
  expect(nextCandidate([], null, 'ArrowDown')).toBeUndefined()
})
