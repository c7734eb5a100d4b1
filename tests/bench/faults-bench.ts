import { seededRandom } from '../../sample-catalogue/seeded-random.ts'
import { readSampleGuide } from '../builders/sample-guide.ts'
import { simulateSample, summariseJobs, wordSummary } from '../builders/simulate-jobs.ts'

/**
 * Jobs drawn from the sample guide's own probabilities, and from a world in which the guide is wrong: each weight and
 * likelihood off by e to a normal error of the size named. As many of every symptom. The same jobs each time.
 */
export async function run(): Promise<void> {
  const cases = await readSampleGuide()
  for (const error of [0, 0.5, 1]) {
    const random = seededRandom(`faults bench ${error}`)
    const jobs = simulateSample(cases, { jobsEach: 60, error, random })
    console.log(wordSummary(`guide off by ${error}`, summariseJobs(jobs)))
  }
}
