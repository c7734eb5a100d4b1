import { expect, test } from 'vitest'
import { smoothCounts } from '../../../../electron/fault-guide/reasoning/smooth-counts.ts'

const map = (figures: Readonly<Record<string, number>>) => new Map(Object.entries(figures))

function check(
  {
    expected,
    counts,
    worth,
  }: { expected: Record<string, number>; counts: Record<string, number>; worth: number },
  smoothed: Readonly<Record<string, number>>,
): void {
  const belief = smoothCounts(map(expected), map(counts), worth)
  for (const [cause, share] of Object.entries(smoothed))
    expect(belief.get(cause), cause).toBeCloseTo(share, 10)
}

test('one count added to each of six words is the textbook’s add-one smoothing', () => {
  // Manning, Raghavan and Schütze, Introduction to Information Retrieval, Cambridge 2008, example 13.1: in eight words
  // about China five are “Chinese” of a vocabulary of six: (5 + 1)/(8 + 6) = 3/7, and a word not seen 1/14. From memory.
  const words = ['Chinese', 'Beijing', 'Shanghai', 'Macao', 'Tokyo', 'Japan']
  const even = Object.fromEntries(words.map(word => [word, 1 / 6]))
  check(
    { expected: even, counts: { Chinese: 5, Beijing: 1, Shanghai: 1, Macao: 1 }, worth: 6 },
    { Chinese: 3 / 7, Beijing: 1 / 7, Tokyo: 1 / 14, Japan: 1 / 14 },
  )
  check(
    { expected: even, counts: { Chinese: 1, Tokyo: 1, Japan: 1 }, worth: 6 },
    { Chinese: 2 / 9, Tokyo: 2 / 9, Beijing: 1 / 9 },
  )
})

test('one success in one trial from an even expectation is the rule of succession', () => {
  // Laplace: after s successes in n trials (s + 1)/(n + 2). MacKay, section 3.2, as a Beta prior. From memory.
  check(
    { expected: { heads: 0.5, tails: 0.5 }, counts: { heads: 1 }, worth: 2 },
    { heads: 2 / 3, tails: 1 / 3 },
  )
})

test('without jobs the expectation stands', () => {
  check({ expected: { pump: 0.7, hose: 0.3 }, counts: {}, worth: 8 }, { pump: 0.7, hose: 0.3 })
})

test('with many jobs their shares stand', () => {
  const belief = smoothCounts(map({ pump: 0.7, hose: 0.3 }), map({ pump: 1000, hose: 9000 }), 8)
  expect(belief.get('hose')).toBeCloseTo(0.9, 2)
})

test('a cause that the guide does not have takes nothing from those it has', () => {
  check({ expected: { pump: 0.7, hose: 0.3 }, counts: { lamp: 50 }, worth: 8 }, { pump: 0.7, hose: 0.3 })
})
