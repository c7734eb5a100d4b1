import { expect, test } from 'vitest'
import { emptyEnquiry, type FaultStep, takeStep } from '../../../renderer/faults/fault-enquiry.ts'

const drain = { applianceType: 'washer', symptom: 'does not drain', alsoSaid: [] }
const choose: FaultStep = { do: 'choose-symptom', symptom: drain }
const answer = (check: string, outcome: string): FaultStep => ({ do: 'answer', answer: { check, outcome } })

function check(steps: readonly FaultStep[], expected: object): void {
  expect(steps.reduce(takeStep, emptyEnquiry)).toMatchObject(expected)
}

test.each<[string, readonly FaultStep[], object]>([
  ['a symptom names the kind of appliance', [choose], { applianceType: 'washer', words: 'does not drain' }],
  [
    'answers follow each other',
    [choose, answer('filter', 'clean'), answer('sound', 'hums')],
    { answers: [{ check: 'filter' }, { check: 'sound' }] },
  ],
  [
    'an answer that is changed keeps its place, and what came after it stays',
    [
      choose,
      answer('filter', 'clean'),
      answer('sound', 'hums'),
      { do: 'ask', check: 'filter' },
      answer('filter', 'full'),
    ],
    {
      answers: [
        { check: 'filter', outcome: 'full' },
        { check: 'sound', outcome: 'hums' },
      ],
      asked: null,
    },
  ],
  [
    'the last answer is taken back',
    [choose, answer('filter', 'clean'), answer('sound', 'hums'), { do: 'take-back' }],
    { answers: [{ check: 'filter', outcome: 'clean' }] },
  ],
  [
    'other words are another fault, and its answers are let go',
    [choose, answer('filter', 'clean'), { do: 'type-words', words: 'does not heat' }],
    { symptom: null, answers: [], applianceType: 'washer' },
  ],
  [
    'an appliance handed over begins anew with it',
    [
      choose,
      answer('filter', 'clean'),
      { do: 'take-appliance', appliance: { model: 'OW 1', brand: 'Ostrel' } },
    ],
    { symptom: null, answers: [], words: '', appliance: { model: 'OW 1', brand: 'Ostrel' } },
  ],
  [
    'a model that is typed afterwards keeps what was found',
    [choose, answer('filter', 'clean'), { do: 'type-model', model: 'OW 2' }],
    { appliance: { model: 'OW 2' }, answers: [{ check: 'filter' }] },
  ],
])('%s', (_, steps, expected) => check(steps, expected))
