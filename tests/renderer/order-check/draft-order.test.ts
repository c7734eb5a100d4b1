import { expect, test } from 'vitest'
import {
  type DraftStep,
  emptyDraft,
  isChangedSince,
  takeStep,
} from '../../../renderer/order-check/draft-order.ts'

function check(steps: readonly DraftStep[], expected: object): void {
  expect(steps.reduce(takeStep, emptyDraft)).toMatchObject(expected)
}

const taken: DraftStep = { do: 'take', text: 'P-1\t2', name: 'monday.csv' }
const asked = { text: 'P-1\t2', name: 'monday.csv', supplier: '' }

test.each<[string, readonly DraftStep[], object]>([
  ['typing asks nothing yet', [{ do: 'type', text: 'P-1' }], { text: 'P-1', asked: null }],
  ['a pasted or opened order is checked at once', [taken], { asked }],
  [
    'what is typed afterwards waits for the key',
    [taken, { do: 'type', text: 'P-1\t3' }],
    { text: 'P-1\t3', asked },
  ],
  [
    'and the key asks for what stands there',
    [taken, { do: 'type', text: 'P-1\t3' }, { do: 'check' }],
    { asked: { ...asked, text: 'P-1\t3' } },
  ],
  [
    'another supplier asks anew',
    [taken, { do: 'choose-supplier', supplier: 'DALE' }],
    { asked: { ...asked, supplier: 'DALE' } },
  ],
  [
    'a supplier alone asks nothing',
    [{ do: 'choose-supplier', supplier: 'DALE' }],
    { supplier: 'DALE', asked: null },
  ],
  ['an empty field asks nothing', [taken, { do: 'type', text: ' \n' }, { do: 'check' }], { asked: null }],
  [
    'another order closes the line that was open',
    [taken, { do: 'open-line', line: 3 }, taken],
    { openLine: null },
  ],
  ['initials go from one stop to the next', [{ do: 'sign', initials: 'AB' }, taken], { initials: 'AB' }],
])('%s', (_title, steps, expected) => check(steps, expected))

test('an order that was changed since says so until it is checked or put back', () => {
  const changed = takeStep(takeStep(emptyDraft, taken), { do: 'type', text: 'P-2' })
  expect(isChangedSince(emptyDraft)).toBe(false)
  expect(isChangedSince(changed)).toBe(true)
  expect(isChangedSince(takeStep(changed, { do: 'check' }))).toBe(false)
  expect(isChangedSince(takeStep(changed, { do: 'type', text: 'P-1\t2' }))).toBe(false)
})
