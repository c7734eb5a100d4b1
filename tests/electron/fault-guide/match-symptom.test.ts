import { expect, test } from 'vitest'
import { jobsOfSymptom } from '../../../electron/fault-guide/match-symptom.ts'

const said = { symptom: 'does not drain', alsoSaid: ['won’t empty', 'water left in it'] }

test.each([
  ['the guide’s own words', 'does not drain', true],
  ['other words for it', 'water left in it', true],
  ['other capitals, spaces and stops', ' Does  not drain. ', true],
  ['another apostrophe', "won't empty", true],
  ['what only looks like it', 'does not drain or spin', false],
])('a job that wrote %s is told', (_, symptom, isOfIt) => {
  expect(jobsOfSymptom([{ symptom }], said)).toHaveLength(isOfIt ? 1 : 0)
})
