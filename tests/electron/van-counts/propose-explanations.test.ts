import { expect, test } from 'vitest'
import {
  type CountFacts,
  proposeExplanations,
  type Variance,
} from '../../../electron/van-counts/propose-explanations.ts'

const nothingKnown: CountFacts = {
  replaced: [],
  unbookedJobs: [],
  transfers: [],
  packs: new Map(),
  receipts: new Map(),
}

const valve = { partId: 1, partNumber: '480121', familyId: 1 }
const otherValve = { partId: 2, partNumber: '480130', familyId: 1 }
const belt = { partId: 3, partNumber: '480112', familyId: 2 }

/** What is proposed for these variances, as `part kind detail`. */
function check(variances: readonly Variance[], facts: Partial<CountFacts>, expected: readonly string[]) {
  const proposed = proposeExplanations(variances, { ...nothingKnown, ...facts })
  expect(proposed.map(({ partId, kind, detail }) => `${partId} ${kind} ${detail}`)).toEqual(expected)
}

const cases: readonly (readonly [title: string, ...Parameters<typeof check>])[] = [
  [
    'equal and opposite in one family is a swap, told on both lines',
    [
      { ...valve, book: 3, counted: 2 },
      { ...otherValve, book: 1, counted: 2 },
    ],
    {},
    ['1 swap 480130', '2 swap 480121'],
  ],
  [
    'opposite but not equal is none',
    [
      { ...valve, book: 3, counted: 1 },
      { ...otherValve, book: 1, counted: 2 },
    ],
    {},
    [],
  ],
  [
    'equal and opposite in two families is none, unless the numbers are one slip apart',
    [
      { ...valve, book: 3, counted: 2 },
      { ...belt, book: 1, counted: 2 },
    ],
    {},
    ['1 digits 480112', '3 digits 480121'],
  ],
  [
    'under the number that took its place',
    [
      { ...valve, book: 3, counted: 0 },
      { ...belt, book: 0, counted: 3 },
    ],
    { replaced: [{ one: 1, other: 3 }] },
    ['1 replaced-number 480112', '1 digits 480112', '3 replaced-number 480121', '3 digits 480121'],
  ],
  [
    'a missing piece that a job needed and nobody booked',
    [{ ...valve, book: 2, counted: 1 }],
    { unbookedJobs: [{ job: 'J7', date: '2026-11-20', familyId: 1 }] },
    ['1 job-line J7'],
  ],
  [
    'a piece too many is no forgotten job line',
    [{ ...valve, book: 2, counted: 3 }],
    { unbookedJobs: [{ job: 'J7', date: '2026-11-20', familyId: 1 }] },
    [],
  ],
  [
    'two missing pieces need two jobs',
    [{ ...valve, book: 2, counted: 0 }],
    { unbookedJobs: [{ job: 'J7', date: '2026-11-20', familyId: 1 }] },
    [],
  ],
  [
    'what was booked as come and is not here',
    [{ ...valve, book: 4, counted: 2 }],
    { transfers: [{ movementId: 'm1', partId: 1, pieces: 2, otherPlace: 'shop' }] },
    ['1 transfer m1'],
  ],
  [
    'what was booked as gone and is still here',
    [{ ...valve, book: 4, counted: 6 }],
    { transfers: [{ movementId: 'm1', partId: 1, pieces: -2, otherPlace: 'shop' }] },
    ['1 transfer m1'],
  ],
  [
    'packs counted as pieces',
    [{ ...valve, book: 20, counted: 2 }],
    { packs: new Map([[1, [10]]]) },
    ['1 pack 10'],
  ],
  [
    'two packs received and booked as two pieces',
    [{ ...valve, book: 3, counted: 21 }],
    { packs: new Map([[1, [10]]]), receipts: new Map([[1, [2]]]) },
    ['1 pack 10'],
  ],
  ['digits exchanged in writing', [{ ...valve, book: 12, counted: 21 }], {}, ['1 digits 12']],
  ['nothing to say of a plain loss', [{ ...valve, book: 12, counted: 9 }], {}, []],
]

test.each(cases)('%s', (_title, ...given) => check(...given))
