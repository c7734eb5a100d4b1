import { expect, test } from 'vitest'
import { gammaDemand } from '../../../../electron/reorder/distributions/continuous-demand.ts'
import { negativeBinomialDemand } from '../../../../electron/reorder/distributions/whole-demand.ts'
import { serviceOfLevel } from '../../../../electron/reorder/levels/fill-rate.ts'
import { averageOverLot, shortageByStock } from '../../../../electron/reorder/levels/shortage-curve.ts'

const cases = [
  { mean: 0.04, ratio: 1.05, leadTime: 1, protection: 2 },
  { mean: 0.6, ratio: 3.4, leadTime: 1, protection: 2 },
  { mean: 2.5, ratio: 1.8, leadTime: 0, protection: 1 },
  { mean: 9, ratio: 6, leadTime: 2, protection: 3 },
]

test.each(cases)(
  'the shortage by stock gives the fill rate of ordering up to that stock: $mean, $ratio',
  ({ mean, ratio, leadTime, protection }) => {
    const over = (periods: number) => ({ mean: mean * periods, ratio })
    const { short, step } = shortageByStock(over(leadTime), over(protection))
    const demand = (periods: number) =>
      periods === 0
        ? { mean: 0, cumulative: () => 1, expectedShortage: () => 0 }
        : negativeBinomialDemand(mean * periods, mean * periods * ratio)
    expect(step).toBe(1)
    for (const [stock, pieces] of short.slice(0, 40).entries()) {
      const { fillRate } = serviceOfLevel(
        { overLeadTime: demand(leadTime), overProtection: demand(protection) },
        stock,
      )
      expect(1 - pieces / (mean * (protection - leadTime))).toBeCloseTo(fillRate, 9)
    }
  },
)

test('what sells by the thousand is reckoned in steps, and as its gamma demand says', () => {
  const { step, short } = shortageByStock({ mean: 1000, ratio: 4 }, { mean: 2000, ratio: 4 })
  expect(step).toBe(10)
  const [longer, shorter] = [gammaDemand(2000, 8000), gammaDemand(1000, 4000)]
  expect(short[200]).toBeCloseTo(longer.expectedShortage(2000) - shorter.expectedShortage(2000), 9)
  expect(short.at(-1)).toBeLessThan(0.02)
})

test('a lot leaves short what the stocks within it leave short on average', () => {
  const curve = shortageByStock({ mean: 1, ratio: 2 }, { mean: 2, ratio: 2 })
  const averaged = averageOverLot(curve, 3)
  const [first = 0, second = 0, third = 0, fourth = 0] = curve.short
  expect(averaged.short[0]).toBeCloseTo((first + second + third) / 3, 12)
  expect(averaged.short[1]).toBeCloseTo((second + third + fourth) / 3, 12)
  expect(averageOverLot(curve, 1)).toEqual(curve)
})
