import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  expectInformation,
  measureEntropy,
} from '../../../../electron/fault-guide/reasoning/expect-information.ts'

/** From a table of joint probabilities, one row an outcome and one column a cause, to what the rule takes. */
function check(joint: readonly (readonly number[])[], expected: number, digits = 3): void {
  expect(expectInformation(...fromJoint(joint))).toBeCloseTo(expected, digits)
}

function fromJoint(joint: readonly (readonly number[])[]): Parameters<typeof expectInformation> {
  const causes = (joint[0] ?? []).map((_, at) => `${at}`)
  const belief = new Map(
    causes.map((cause, at) => [cause, joint.reduce((all, row) => all + (row[at] ?? 0), 0)]),
  )
  const outcomes = joint.map((row, at) => ({
    outcome: `${at}`,
    likelihoods: new Map(
      causes.map((cause, column) => [cause, (row[column] ?? 0) / (belief.get(cause) ?? 1)]),
    ),
  }))
  return [belief, outcomes]
}

describe('entropy', () => {
  test('of eight horses of unlike chances is two bits, and of four of them 7/4', () => {
    // Cover and Thomas, Elements of Information Theory, Wiley 2006: example 1.1.2, and the marginal of example 2.2.1.
    // From memory.
    expect(measureEntropy([1 / 2, 1 / 4, 1 / 8, 1 / 16, 1 / 64, 1 / 64, 1 / 64, 1 / 64])).toBeCloseTo(2, 10)
    expect(measureEntropy([1 / 2, 1 / 4, 1 / 8, 1 / 8])).toBeCloseTo(7 / 4, 10)
  })

  test('of nine days with tennis and five without is 0.940 bits', () => {
    // Mitchell, Machine Learning, McGraw-Hill 1997, section 3.4.1. From memory.
    expect(measureEntropy([9 / 14, 5 / 14])).toBeCloseTo(0.94, 3)
  })

  test('counts a share of nothing as nothing', () => {
    expect(measureEntropy([1, 0])).toBe(0)
  })
})

describe('expected information', () => {
  test('of a joint distribution is its mutual information', () => {
    // Cover and Thomas, example 2.2.1 and its continuation: I(X; Y) = 3/8 bit. From memory.
    check(
      [
        [1 / 8, 1 / 16, 1 / 32, 1 / 32],
        [1 / 16, 1 / 8, 1 / 32, 1 / 32],
        [1 / 16, 1 / 16, 1 / 16, 1 / 16],
        [1 / 4, 0, 0, 0],
      ],
      3 / 8,
      10,
    )
  })

  // Mitchell, section 3.4.2 and 3.4.3: the information gain of each attribute over fourteen days of tennis (9 yes, 5 no),
  // printed as 0.246, 0.151, 0.048 and 0.029, the first cut short from 0.2467. From memory.
  test.each([
    [
      'outlook',
      [
        [2, 3],
        [4, 0],
        [3, 2],
      ],
      0.2467,
    ],
    [
      'humidity',
      [
        [3, 4],
        [6, 1],
      ],
      0.1518,
    ],
    [
      'wind',
      [
        [6, 2],
        [3, 3],
      ],
      0.0481,
    ],
    [
      'temperature',
      [
        [2, 2],
        [4, 2],
        [3, 1],
      ],
      0.0292,
    ],
  ])('of %s over the days of tennis is as printed', (_, days, expected) => {
    check(
      days.map(row => row.map(count => count / 14)),
      expected,
      4,
    )
  })

  // MacKay, section 4.1: twelve balls, one of them heavier or lighter; four against four tells log2 3 bits at the first
  // weighing, six against six one bit. From memory.
  test.each([
    [4, Math.log2(3)],
    [6, 1],
    [5, 1.483],
  ])('of weighing %i balls against as many of twelve is as in the weighing problem', (aside, expected) => {
    check(weighingOf(aside), expected, 3)
  })

  test('is never below nothing and never above the entropy', () => {
    const figure = fc.double({ min: 0.001, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        fc.array(fc.array(figure, { minLength: 4, maxLength: 4 }), { minLength: 1, maxLength: 5 }),
        rows => {
          const total = rows.flat().reduce((all, value) => all + value, 0)
          const [belief, outcomes] = fromJoint(rows.map(row => row.map(value => value / total)))
          const bits = expectInformation(belief, outcomes)
          expect(bits).toBeGreaterThan(-1e-9)
          expect(bits).toBeLessThan(measureEntropy(belief.values()) + 1e-9)
        },
      ),
    )
  })
})

/** Twenty-four causes, each ball heavy or light: the pan sinks left, balances or sinks right. */
function weighingOf(aside: number): number[][] {
  const rows: number[][] = [[], [], []]
  for (let ball = 0; ball < 12; ball++)
    for (const isHeavy of [true, false]) {
      const side = ball < aside ? 0 : ball < 2 * aside ? 2 : 1
      const sinks = side === 1 || isHeavy ? side : 2 - side
      for (const [at, row] of rows.entries()) row.push(at === sinks ? 1 / 24 : 0)
    }
  return rows
}
