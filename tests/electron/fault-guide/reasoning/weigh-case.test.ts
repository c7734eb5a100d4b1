import { describe, expect, test } from 'vitest'
import {
  type FaultCase,
  type GivenAnswer,
  weighCase,
} from '../../../../electron/fault-guide/reasoning/weigh-case.ts'

const yesNo = (check: string, effort: number, yes: Readonly<Record<string, number>>) => ({
  check,
  effort,
  outcomes: [
    { outcome: 'yes', likelihoods: new Map(Object.entries(yes)) },
    { outcome: 'no', likelihoods: new Map(Object.entries(yes).map(([cause, share]) => [cause, 1 - share])) },
  ],
})

const drain: FaultCase = {
  prior: new Map([
    ['filter blocked', 0.5],
    ['pump worn', 0.3],
    ['pump burnt', 0.2],
  ]),
  remedyOf: cause => (cause.startsWith('pump') ? 'drain-pump' : cause),
  checks: [
    yesNo('pump coil open', 15, { 'filter blocked': 0.02, 'pump worn': 0.02, 'pump burnt': 0.95 }),
    yesNo('filter full of lint', 2, { 'filter blocked': 0.95, 'pump worn': 0.1, 'pump burnt': 0.1 }),
  ],
}

function check(answers: readonly GivenAnswer[], expected: { end: string; next: string | undefined }): void {
  const { end, checks } = weighCase(drain, answers)
  expect({ end: end.end, next: checks[0]?.check }).toEqual(expected)
}

describe('a case', () => {
  test('begins with the check that tells most in a minute, not with the first listed', () => {
    check([], { end: 'not-yet', next: 'filter full of lint' })
  })

  test('ends when one remedy is likely enough', () => {
    check([{ check: 'filter full of lint', outcome: 'yes' }], { end: 'settled', next: 'pump coil open' })
  })

  test('goes on with the next check after one that could not be told, and does not ask it again', () => {
    check([{ check: 'filter full of lint', outcome: null }], { end: 'not-yet', next: 'pump coil open' })
  })

  test('says that it cannot tell, or names two, when nothing is left to ask', () => {
    const skipped = drain.checks.map(({ check: name }) => ({ check: name, outcome: null }))
    const { end } = weighCase(drain, skipped)
    expect(end.end === 'settled' && end.remedies.map(({ remedy }) => remedy)).toEqual([
      'drain-pump',
      'filter blocked',
    ])
  })

  test('that was skipped leaves the belief as it was', () => {
    expect(weighCase(drain, [{ check: 'pump coil open', outcome: null }]).belief).toEqual(drain.prior)
  })

  test('an answer that its check does not have is a defect', () => {
    expect(() => weighCase(drain, [{ check: 'pump coil open', outcome: 'maybe' }])).toThrow(
      'no outcome maybe',
    )
  })
})
