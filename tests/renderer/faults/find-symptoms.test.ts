import { expect, test } from 'vitest'
import { findSymptoms } from '../../../renderer/faults/find-symptoms.ts'

const symptoms = [
  {
    applianceType: 'dishwasher',
    symptom: 'over-fills',
    alsoSaid: ['keeps filling and pumping out', 'floods'],
  },
  { applianceType: 'dishwasher', symptom: 'does not drain', alsoSaid: ['water left in the bottom'] },
  { applianceType: 'washer', symptom: 'does not drain', alsoSaid: ['won’t pump out'] },
  { applianceType: 'oven', symptom: 'does not heat', alsoSaid: ['stays cold'] },
]

function check(words: string, applianceType: string, expected: string): void {
  const [first] = findSymptoms(symptoms, { words, applianceType })
  expect(`${first?.applianceType} ${first?.symptom}`).toBe(expected)
}

test.each([
  [
    'the customer’s own words find the symptom',
    'it keeps filling and pumping out',
    '',
    'dishwasher over-fills',
  ],
  ['a slip of the finger is forgiven', 'dosnt drain', 'washer', 'washer does not drain'],
  ['other words for it are as good', 'stays cold', '', 'oven does not heat'],
  ['the kind of appliance counts as a word', 'washer drain', '', 'washer does not drain'],
])('%s', (_, words, type, expected) => check(words, type, expected))

test('only symptoms of the chosen kind of appliance are listed, all of them before a word is typed', () => {
  expect(findSymptoms(symptoms, { words: ' ', applianceType: 'dishwasher' })).toHaveLength(2)
})
