import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Belief } from '../../../../electron/fault-guide/reasoning/belief.ts'
import { rankCauses, weighCauses } from '../../../../electron/fault-guide/reasoning/weigh-causes.ts'

const map = (figures: Readonly<Record<string, number>>) => new Map(Object.entries(figures))

function check(
  prior: Readonly<Record<string, number>>,
  outcomes: readonly Readonly<Record<string, number>>[],
  expected: Readonly<Record<string, number>>,
  digits = 4,
): void {
  const belief = weighCauses(map(prior), outcomes.map(map))
  for (const [cause, probability] of Object.entries(expected))
    expect(belief.get(cause), cause).toBeCloseTo(probability, digits)
}

describe('causes are weighed by Bayes’ rule', () => {
  test('as in the test for a rare disease', () => {
    // MacKay, Information Theory, Inference, and Learning Algorithms, Cambridge 2003, example 2.3: 1 % have it, the test
    // is right in 95 % of either kind, and after a positive one it is 0.16. From memory.
    check({ ill: 0.01, well: 0.99 }, [{ ill: 0.95, well: 0.05 }], { ill: 0.161, well: 0.839 }, 3)
  })

  test('as in the two bowls of biscuits', () => {
    // Downey, Think Bayes, O’Reilly, chapter 1: 30 of 40 in the first bowl and 20 of 40 in the second are plain; a plain
    // one came from the first with 3/5. From memory.
    check({ first: 0.5, second: 0.5 }, [{ first: 30 / 40, second: 20 / 40 }], { first: 3 / 5, second: 2 / 5 })
  })

  test('as in the three doors', () => {
    // MacKay, example 3.8: door 1 is chosen, the host opens 3; behind door 2 it is with 2/3. From memory.
    check(
      { 'door 1': 1 / 3, 'door 2': 1 / 3, 'door 3': 1 / 3 },
      [{ 'door 1': 1 / 2, 'door 2': 1, 'door 3': 0 }],
      { 'door 1': 1 / 3, 'door 2': 2 / 3, 'door 3': 0 },
    )
  })

  test('over several outcomes, as in the documents about China', () => {
    // Manning, Raghavan and Schütze, Introduction to Information Retrieval, Cambridge 2008, example 13.1: the document
    // “Chinese Chinese Chinese Tokyo Japan” is weighed as 0.0003 to 0.0001. From memory.
    const chinese = { china: 3 / 7, other: 2 / 9 }
    const tokyoOrJapan = { china: 1 / 14, other: 2 / 9 }
    const china = (3 / 4) * (3 / 7) ** 3 * (1 / 14) ** 2
    const other = (1 / 4) * (2 / 9) ** 3 * (2 / 9) ** 2
    expect([china.toFixed(4), other.toFixed(4)]).toEqual(['0.0003', '0.0001'])
    check(
      { china: 3 / 4, other: 1 / 4 },
      [chinese, chinese, chinese, tokyoOrJapan, tokyoOrJapan],
      { china: china / (china + other) },
      10,
    )
  })
})

describe('laws of the weighing', () => {
  const causes = ['a', 'b', 'c', 'd']
  const figures = fc.tuple(...causes.map(() => fc.double({ min: 0.01, max: 1, noNaN: true })))
  const asMap = (values: readonly number[]) => new Map(causes.map((cause, at) => [cause, values[at] ?? 0]))
  const prior = figures.map(values => weighCauses(asMap(values), []))
  const close = (one: Belief, other: Belief) => {
    for (const cause of causes) expect(one.get(cause)).toBeCloseTo(other.get(cause) ?? Number.NaN, 10)
  }

  test('the order of the outcomes makes no difference, nor whether they come one by one', () => {
    fc.assert(
      fc.property(prior, figures, figures, (belief, one, other) => {
        const together = weighCauses(belief, [asMap(one), asMap(other)])
        close(together, weighCauses(belief, [asMap(other), asMap(one)]))
        close(together, weighCauses(weighCauses(belief, [asMap(one)]), [asMap(other)]))
      }),
    )
  })

  test('an outcome that every cause makes as probable changes nothing', () => {
    fc.assert(
      fc.property(prior, fc.double({ min: 0.01, max: 1, noNaN: true }), (belief, same) =>
        close(weighCauses(belief, [asMap(causes.map(() => same))]), belief),
      ),
    )
  })

  test('shares sum to one', () => {
    fc.assert(
      fc.property(prior, figures, (belief, one) => {
        const total = [...weighCauses(belief, [asMap(one)]).values()].reduce((so, far) => so + far, 0)
        expect(total).toBeCloseTo(1, 12)
      }),
    )
  })
})

test('the likeliest cause stands first, and equals keep one order', () => {
  expect(rankCauses(map({ b: 0.2, c: 0.6, a: 0.2 })).map(({ cause }) => cause)).toEqual(['c', 'a', 'b'])
})

test('a cause without a likelihood is a defect of the guide, not a zero', () => {
  expect(() => weighCauses(map({ a: 0.5, b: 0.5 }), [map({ a: 0.5 })])).toThrow('b has none')
})
