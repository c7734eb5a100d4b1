import { expect, test } from 'vitest'
import { seededRandom } from '../../../sample-catalogue/seeded-random.ts'
import {
  type BackTest,
  playOurs,
  playRule,
  type RuleOfThumb,
  rulesOfThumb,
  stockAt,
} from '../../bench/back-test.ts'

/**
 * Months of parts that are asked for now and then: Poisson arrivals at a rate that differs from part to part by an
 * exponential law, sizes geometric, a usual model of slow spares (Syntetos, Boylan and Croston 2005; from memory). Mean and
 * share of empty months are about those of the open car parts, which `npm run bench -- back-test` plays; those stand beside
 * the repository, and these keep the same from getting worse where they are missing.
 */
const { next: random } = seededRandom('slow spares')
const back: BackTest = {
  parts: Array.from({ length: 600 }, () => {
    const rate = -0.36 * Math.log(1 - random())
    return Int32Array.from({ length: 51 }, () => sum(poisson(rate), () => geometric(1.4)))
  }),
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

function poisson(mean: number): number {
  // Knuth, The Art of Computer Programming, volume 2, 3.4.1: fine for small means.
  let arrivals = 0
  for (let chance = random(); chance > Math.exp(-mean); chance *= random()) arrivals++
  return arrivals
}

function geometric(mean: number): number {
  return 1 + Math.floor(Math.log(1 - random()) / Math.log(1 - 1 / mean))
}

function sum(times: number, of: () => number): number {
  let total = 0
  for (let at = 0; at < times; at++) total += of()
  return total
}
