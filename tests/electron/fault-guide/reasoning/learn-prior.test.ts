import { expect, test } from 'vitest'
import {
  type FinishedJob,
  learnPrior,
  worthOfGuide,
  worthOfType,
} from '../../../../electron/fault-guide/reasoning/learn-prior.ts'

const causes = [
  { cause: 'pump worn', weight: 3, families: ['drain-pump'] },
  { cause: 'pump blocked', weight: 1, families: ['drain-pump'] },
  { cause: 'hose kinked', weight: 4, families: [] },
]
const job = (over: Partial<FinishedJob>): FinishedJob => ({
  platform: null,
  cause: null,
  families: [],
  ...over,
})
const many = (count: number, over: Partial<FinishedJob>) => Array.from({ length: count }, () => job(over))

function check(jobs: readonly FinishedJob[], platform: string | null, expected: readonly number[]): void {
  const priors = learnPrior(causes, jobs, platform).map(({ prior }) => prior)
  expect(priors.reduce((all, prior) => all + prior, 0)).toBeCloseTo(1, 12)
  for (const [at, prior] of priors.entries()) expect(prior).toBeCloseTo(expected[at] ?? Number.NaN, 10)
}

test('a shop without jobs begins with the guide', () => {
  check([], 'washer-1', [3 / 8, 1 / 8, 4 / 8])
})

test('jobs of the type bend the guide as smoothing by its worth says', () => {
  const ofTen = (weight: number, count: number) => (count + worthOfGuide * weight) / (10 + worthOfGuide)
  check(many(10, { cause: 'hose kinked' }), null, [ofTen(3 / 8, 0), ofTen(1 / 8, 0), ofTen(4 / 8, 10)])
})

test('jobs of the platform count twice, for it and for its type', () => {
  const jobs = many(4, { cause: 'pump blocked', platform: 'washer-1' })
  const byType = [3 / 8, 1 / 8, 4 / 8].map(
    (weight, at) => ((at === 1 ? 4 : 0) + worthOfGuide * weight) / (4 + worthOfGuide),
  )
  check(
    jobs,
    'washer-1',
    byType.map((share, at) => ((at === 1 ? 4 : 0) + worthOfType * share) / (4 + worthOfType)),
  )
})

test('a platform without jobs begins with its type', () => {
  const jobs = many(6, { cause: 'hose kinked', platform: 'washer-1' })
  expect(learnPrior(causes, jobs, 'washer-9').map(({ prior }) => prior)).toEqual(
    learnPrior(causes, jobs, null).map(({ prior }) => prior),
  )
})

test('a job that tells only what was fitted counts for the causes that this puts right, by their shares', () => {
  const [worn, blocked, hose] = learnPrior(causes, [job({ families: ['drain-pump', 'lamp'] })], null)
  expect([worn?.jobsOfType, blocked?.jobsOfType, hose?.jobsOfType]).toEqual([3 / 4, 1 / 4, 0])
})

test('a job of another fault teaches nothing here', () => {
  check([job({ families: ['lamp'] }), job({ cause: 'fuse blown' }), job({})], null, [3 / 8, 1 / 8, 4 / 8])
})

test('jobs that tell only their part leave the share of causes without one as it was', () => {
  const other = { cause: 'board dead', weight: 2, families: ['board'] }
  const [worn, blocked, hose, board] = learnPrior(
    [...causes, other],
    many(1000, { families: ['drain-pump'] }),
    null,
  ).map(({ prior }) => prior)
  expect(hose).toBeCloseTo(4 / 10, 10)
  expect(board).toBeLessThan(0.01)
  expect((worn ?? 0) / (blocked ?? 1)).toBeCloseTo(3, 10)
})

test('jobs that name a cause without a part raise it', () => {
  const jobs = [...many(10, { families: ['drain-pump'] }), ...many(10, { cause: 'hose kinked' })]
  const [, , hose] = learnPrior(causes, jobs, null)
  expect(hose?.jobsOfType).toBe(10)
  // Ten named, ten unseen beside the ten that tell only their part, and half of the guide’s twenty; of fifty.
  expect(hose?.prior).toBeCloseTo(30 / 50, 10)
})
