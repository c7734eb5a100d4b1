import fc from 'fast-check'
import { expect, test } from 'vitest'
import { planLevels } from '../../../../electron/reorder/levels/plan-levels.ts'

const anyHistories = fc.array(
  fc.array(fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.integer({ min: 0, max: 6 })), {
    minLength: 30,
    maxLength: 30,
  }),
  { minLength: 1, maxLength: 12 },
)
const rhythm = { daysPerBucket: 30.436875, reviewDays: 30, fillRate: 0.95 }
const asParts = (histories: readonly (readonly number[])[], until: number) =>
  histories.map((history, partId) => ({
    ...{ partId, series: Int32Array.from(history).subarray(0, until) },
    ...{ leadDays: 30, leadDaysDeviation: 3, lot: 1, shelfLimit: null },
  }))

test('levels of a month are the same whatever came after it', () =>
  fc.assert(
    fc.property(anyHistories, fc.integer({ min: 1, max: 29 }), (histories, until) => {
      const cut = histories.map(history => history.map((pieces, at) => (at < until ? pieces : 9 - pieces)))
      expect(planLevels(asParts(histories, until), rhythm)).toEqual(planLevels(asParts(cut, until), rhythm))
    }),
    { numRuns: 60 },
  ))

test('more is kept for a higher aim, and every figure is a figure', () =>
  fc.assert(
    fc.property(anyHistories, histories => {
      const parts = asParts(histories, 30)
      const [low, high] = [0.8, 0.97].map(fillRate => planLevels(parts, { ...rhythm, fillRate }))
      const pieces = (plan: typeof low) =>
        plan?.levels.reduce((sum, { orderUpTo }) => sum + orderUpTo, 0) ?? -1
      expect(pieces(high)).toBeGreaterThanOrEqual(pieces(low))
      expect(high?.expectedFillRate).toBeGreaterThanOrEqual(0.97 - 1e-9)
      for (const level of high?.levels ?? [])
        for (const figure of Object.values(level)) expect(figure).not.toBeNaN()
    }),
    { numRuns: 60 },
  ))
