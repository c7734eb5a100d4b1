import { describe, expect, test } from 'vitest'
import { type OpenCheck, rankChecks } from '../../../../electron/fault-guide/reasoning/choose-check.ts'

const belief = new Map([
  ['pump', 0.5],
  ['hose', 0.5],
])

/** A check that says yes or no, right in `right` of all cases. */
const yesOrNo = (check: string, effort: number, right: number): OpenCheck => ({
  check,
  effort,
  outcomes: [
    {
      outcome: 'yes',
      likelihoods: new Map([
        ['pump', right],
        ['hose', 1 - right],
      ]),
    },
    {
      outcome: 'no',
      likelihoods: new Map([
        ['pump', 1 - right],
        ['hose', right],
      ]),
    },
  ],
})

function check(checks: readonly OpenCheck[], expected: readonly string[]): void {
  expect(rankChecks(belief, checks).map(ranked => ranked.check)).toEqual(expected)
}

describe('the next check', () => {
  test('is the one that tells most where both take as long', () => {
    check([yesOrNo('listen', 2, 0.7), yesOrNo('measure', 2, 0.95)], ['measure', 'listen'])
  })

  test('is the quicker one where both tell as much', () => {
    check([yesOrNo('take apart', 20, 0.9), yesOrNo('look', 2, 0.9)], ['look', 'take apart'])
  })

  test('is not one that tells nothing', () => {
    check([yesOrNo('toss a coin', 0.1, 0.5)], [])
  })

  test('tells as many bits as a noisy channel carries', () => {
    // MacKay, exercise 9.12 and section 9.5: a binary symmetric channel that errs in 15 % carries 0.39 bit. From memory.
    const [only] = rankChecks(belief, [yesOrNo('measure', 2, 0.85)])
    expect(only?.bits).toBeCloseTo(0.39, 2)
    expect(only?.bitsPerMinute).toBeCloseTo(0.195, 2)
  })
})
