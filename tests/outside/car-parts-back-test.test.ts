import { expect, test } from 'vitest'
import {
  type BackTest,
  playOurs,
  playRule,
  type RuleOfThumb,
  rulesOfThumb,
  stockAt,
} from '../bench/back-test.ts'
import { readCarParts } from '../bench/read-car-parts.ts'

/**
 * A third of the car parts (Hyndman, Koehler, Ord and Snyder 2008) through months 37 to 51, on which nothing was chosen.
 * `npm run bench -- back-test` plays all of them; here, the same is to be had on fewer.
 */
const back: BackTest = {
  parts: readCarParts().filter((_, at) => at % 3 === 0),
  from: 36,
  to: 51,
  leadMonths: 1,
}
const targets = [0.86, 0.9, 0.95, 0.975]
const ours = playOurs(back, targets)
const theirs = (Object.keys(rulesOfThumb) as RuleOfThumb[]).map(rule => playRule(back, rule))

test.each([
  [0.9, 12, 4],
  [0.95, 15, 12],
])(
  'at a fill rate of %f a rule of thumb needs more stock, however it is tuned',
  (fillRate, first, others) => {
    const own = stockAt(ours, fillRate)
    const [highest = 0, ...covers] = theirs.map(played => stockAt(played, fillRate))
    const reached = covers.filter(stock => !Number.isNaN(stock))
    expect(reached).not.toEqual([])
    expect(own).toBeLessThan((1 - first / 100) * highest)
    expect(own).toBeLessThan((1 - others / 100) * Math.min(...reached))
  },
)

test.each([0.9, 0.95])('a target of %f is what comes of it, within two points', target =>
  expect(Math.abs((ours[targets.indexOf(target)]?.fillRate ?? 0) - target)).toBeLessThan(0.02),
)
