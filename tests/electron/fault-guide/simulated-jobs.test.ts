import { beforeAll, describe, expect, test } from 'vitest'
import { seededRandom } from '../../../sample-catalogue/seeded-random.ts'
import { readSampleGuide, type SampleCase } from '../../builders/sample-guide.ts'
import { simulateSample, summariseJobs, wordSummary } from '../../builders/simulate-jobs.ts'

// `npm run bench -- faults` draws more jobs, and from a guide that is further off.

let cases: readonly SampleCase[]
beforeAll(async () => {
  cases = await readSampleGuide()
}, 60_000)

describe.each([
  ['drawn from the guide’s own probabilities', 0],
  ['drawn from a world in which every figure of the guide is off', 0.5],
])('jobs %s', (what, error) => {
  test('end with the true cause in the top two, and sooner than by the checks as they are listed', () => {
    const random = seededRandom(`simulated jobs ${error}`)
    const summary = summariseJobs(simulateSample(cases, { jobsEach: 12, error, random }))
    console.log(wordSummary(what, summary))
    expect(summary.jobs).toBeGreaterThanOrEqual(700)
    expect(summary.causeInTopTwo).toBeGreaterThanOrEqual(0.9)
    expect(1 - summary.minutes.policy / summary.minutes.listed).toBeGreaterThanOrEqual(0.25)
  }, 60_000)
})
