import { describe, expect, test } from 'vitest'
import { classifyDemand, shapeOfDemand } from '../../../electron/reorder/demand/classify-demand.ts'
import {
  forecastCroston,
  forecastSyntetosBoylan,
  forecastTeunterSyntetosBabai,
} from '../../../electron/reorder/demand/forecast-intermittent.ts'
import { rankByValue } from '../../../electron/reorder/demand/rank-by-value.ts'
import { seasonalIndices } from '../../../electron/reorder/demand/seasonal-indices.ts'
import { gammaDemand, normalDemand } from '../../../electron/reorder/distributions/continuous-demand.ts'
import {
  type LeadTimeDemand,
  stockForCycleService,
} from '../../../electron/reorder/distributions/lead-time-demand.ts'
import {
  inverseUnitNormalLoss,
  normalCumulative,
  normalDensity,
  normalQuantile,
  unitNormalLoss,
} from '../../../electron/reorder/distributions/normal.ts'
import {
  compoundPoissonDemand,
  convolvedDemand,
  negativeBinomialDemand,
  poissonDemand,
} from '../../../electron/reorder/distributions/whole-demand.ts'
import { fillRateOfReorderPoint, serviceOfLevel } from '../../../electron/reorder/levels/fill-rate.ts'
import {
  costOfQuantity,
  economicPacks,
  economicQuantity,
  lotsToOrder,
  quantityUnderBreaks,
  roundToPacks,
} from '../../../electron/reorder/levels/order-quantity.ts'
import {
  demandOverLeadTime,
  reorderPointForCycleService,
  reorderPointForFillRate,
} from '../../../electron/reorder/levels/reorder-point.ts'
import { averageOverLot } from '../../../electron/reorder/levels/shortage-curve.ts'
import { type ReferenceInputs, type ReferenceValue, valuesOn } from './reference-values.ts'

type Inputs = ReferenceInputs
type Figure = number | string
type Computed = Figure | Readonly<Record<string, Figure | readonly Figure[]>>

const lossOf = (demand: LeadTimeDemand, stock: number) => {
  const shortage = demand.expectedShortage(stock)
  return { shortage, leftover: stock - demand.mean + shortage }
}
const weekly = (inputs: Inputs): number[] => {
  const most = Math.max(...Object.keys(inputs.weekly).map(Number))
  return Array.from({ length: most + 1 }, (_, pieces) => inputs.weekly[pieces] ?? 0)
}
const upTo = (demand: LeadTimeDemand, pieces: number) =>
  Array.from({ length: pieces + 1 }, (_, at) => demand.cumulative(at))
const fixed = { deviation: 0, leadTimeDeviation: 0 }

/** By the beginning of a topic: how the program computes it. Each value's source stands beside it in the file. */
const computations: Readonly<Record<string, (inputs: Inputs) => Computed>> = {
  'standard normal quantile': ({ p }) => normalQuantile(p),
  'standard normal pdf and cdf': ({ z }) => ({ pdf: normalDensity(z), cdf: normalCumulative(z) }),
  'unit normal loss function G(z) and complementary loss': ({ z }) => ({
    G: unitNormalLoss(z),
    G_bar: unitNormalLoss(z) + z,
  }),
  'unit normal loss function, 4-figure table': ({ z }) => unitNormalLoss(z),
  'inverse of the unit normal loss function': ({ G }) => inverseUnitNormalLoss(G),
  'normal loss: expected shortage': ({ stock, mean, sd }) => lossOf(normalDemand(mean, sd), stock),
  'reorder point, lead-time demand given': ({ meanLTD, sdLTD, stockoutRisk }) => {
    const demand = { mean: meanLTD, deviation: sdLTD, leadTime: 1, leadTimeDeviation: 0 }
    const reorderPoint = reorderPointForCycleService(demand, 1 - stockoutRisk)
    return { z: normalQuantile(1 - stockoutRisk), safetyStock: reorderPoint - meanLTD, reorderPoint }
  },
  'reorder point, demand varies, lead time fixed': ({
    meanPerWeek,
    sdPerWeek,
    leadTimeWeeks,
    stockoutRisk,
  }) => ({
    reorderPoint: reorderPointForCycleService(
      { ...fixed, mean: meanPerWeek, deviation: sdPerWeek, leadTime: leadTimeWeeks },
      1 - stockoutRisk,
    ),
  }),
  'reorder point, demand and lead time both vary': inputs => {
    const demand = {
      mean: inputs.meanPerDay,
      deviation: inputs.sdPerDay,
      leadTime: inputs.meanLeadTimeDays,
      leadTimeDeviation: inputs.sdLeadTimeDays,
    }
    return {
      sdLTD: demandOverLeadTime(demand).deviation,
      reorderPoint: reorderPointForCycleService(demand, inputs.serviceLevel),
    }
  },
  'reorder point, demand varies (package example)': ({
    meanPerPeriod,
    sdPerPeriod,
    leadTime,
    serviceLevel,
  }) => ({
    reorderPoint: reorderPointForCycleService(
      { ...fixed, mean: meanPerPeriod, deviation: sdPerPeriod, leadTime },
      serviceLevel,
    ),
  }),
  'safety stock (package example)': ({ sdPerPeriod, leadTime, serviceLevel }) => ({
    safetyStock: reorderPointForCycleService(
      { ...fixed, mean: 0, deviation: sdPerPeriod, leadTime },
      serviceLevel,
    ),
  }),
  'periodic review (R,S): amount to order': inputs => {
    const demand = {
      ...fixed,
      mean: inputs.meanPerDay,
      deviation: inputs.sdPerDay,
      leadTime: inputs.leadTimeDays + inputs.orderIntervalDays,
    }
    return { orderQuantity: reorderPointForCycleService(demand, inputs.serviceLevel) - inputs.onHand }
  },
  'distribution of demand over the protection interval': inputs => {
    const cdf = upTo(convolvedDemand(weekly(inputs), inputs.weeks), 4)
    return { cdf, pmf: cdf.map((value, at) => value - (cdf[at - 1] ?? 0)) }
  },
  'fill rate, traditional formula': inputs => {
    const demand = convolvedDemand(weekly(inputs), inputs.review + inputs.leadTime)
    const mean = demand.mean / (inputs.review + inputs.leadTime)
    const [seven, eight] = [demand.expectedShortage(7), demand.expectedShortage(8)]
    return {
      meanPerWeek: mean,
      shortage_S7: seven,
      shortage_S8: eight,
      fill_S7: 1 - seven / (mean * inputs.review),
      fill_S8: 1 - eight / (mean * inputs.review),
    }
  },
  'cycle service trap': ({ demandOneWeekIn, stock }) => {
    const overProtection = convolvedDemand([1 - 1 / demandOneWeekIn, 1 / demandOneWeekIn], 1)
    const { cycleService, fillRate } = serviceOfLevel(
      { overProtection, overLeadTime: convolvedDemand([1], 1) },
      stock,
    )
    return { cycleService, fillRate }
  },
  'continuous review (s,Q)': ({ meanLTD, sdLTD, Q, s }) => ({
    cycleService: normalDemand(meanLTD, sdLTD).cumulative(s),
    fillRate: fillRateOfReorderPoint(normalDemand(meanLTD, sdLTD), { reorderPoint: s, quantity: Q }),
  }),
  'reorder point for a target fill rate': ({ meanLTD, sdLTD, Q, targetFill }) => {
    const s = reorderPointForFillRate(
      { mean: meanLTD, deviation: sdLTD },
      { quantity: Q, target: targetFill },
    )
    return { s, k: (s - meanLTD) / sdLTD }
  },
  'EOQ, cost of a non-optimal quantity': ({ K, h, d, Q }) => ({
    cost: costOfQuantity({ perOrder: K, holding: h, yearly: d }, Q),
  }),
  'EOQ with all-units quantity discounts': ({ K, holdingRate, d, breakpoints, unitPrices }) => {
    const breaks = breakpoints.map((from, at) => ({ from, price: unitPrices[at] ?? Number.NaN }))
    const { quantity, cost } = quantityUnderBreaks({ perOrder: K, holdingRate, yearly: d }, breaks)
    return { Q: quantity, cost }
  },
  'minimum order quantity and pack rounding': ({ need, minimumOrder, pack }) =>
    roundToPacks(need, { minimum: minimumOrder, pack }),
  'EOQ restricted to pack multiples': ({ K, h, d, pack }) =>
    economicPacks({ perOrder: K, holding: h, yearly: d }, pack),
  '(R,s,nQ)': ({ s, Q, inventoryPosition }) => lotsToOrder(inventoryPosition, { reorderPoint: s, lot: Q }),
  '(r,Q) Poisson, exact cost (position uniform on r+1..r+Q)': ({ h, p, K, demand, leadTime, r, Q }) => {
    const overLeadTime = poissonDemand(demand * leadTime)
    const short = Array.from({ length: 60 }, (_, stock) => overLeadTime.expectedShortage(stock))
    const owed = averageOverLot({ step: 1, short }, Q).short[r + 1] ?? Number.NaN
    const onHand = r + (Q + 1) / 2 - overLeadTime.mean + owed
    return (K * demand) / Q + h * onHand + p * owed
  },
  'Poisson base-stock level': ({ meanOverProtectionInterval, target }) =>
    stockForCycleService(poissonDemand(meanOverProtectionInterval), target),
  'negative binomial base-stock level': ({ mean, variance, target }) =>
    stockForCycleService(negativeBinomialDemand(mean, variance), target),
  'gamma base-stock level': ({ mean, variance, target }) => gammaDemand(mean, variance).quantile(target),
  'Poisson loss': ({ S, mean }) => lossOf(poissonDemand(mean), S),
  'gamma loss': ({ S, shape, scale }) => lossOf(gammaDemand(shape * scale, shape * scale * scale), S),
  'compound Poisson': ({ orders, sizes }) => {
    const demand = compoundPoissonDemand(
      orders,
      new Map(Object.entries(sizes).map(([size, p]) => [Number(size), p])),
    )
    const levels = Object.fromEntries(
      [90, 95, 98, 99].map(target => [`S${target}`, stockForCycleService(demand, target / 100)]),
    )
    return { mean: demand.mean, cdf_0_8: upTo(demand, 8), ...levels }
  },
  'Poisson-logarithmic compound equals negative binomial': ({ orders, theta }) => {
    // The logarithmic series with this parameter: size k has probability -theta^k / (k ln(1 - theta)).
    const sizes = new Map(
      Array.from(
        { length: 60 },
        (_, at) => [at + 1, -(theta ** (at + 1)) / ((at + 1) * Math.log(1 - theta))] as const,
      ),
    )
    return { cdf_0_10: upTo(compoundPoissonDemand(orders, sizes), 10) }
  },
  "Croston's forecast": ({ series, alpha }) => forecastCroston(series, { alpha }),
  'Syntetos-Boylan (SBA) forecast': ({ series, alpha }) => forecastSyntetosBoylan(series, { alpha }),
  'TSB forecast': ({ series, alpha, beta }) => forecastTeunterSyntetosBabai(series, { alpha, beta }),
  'Syntetos-Boylan demand class': ({ ADI, CV2 }) => classifyDemand({ interval: ADI, variation: CV2 }),
  'ADI and CV2 of a series': ({ series }) => {
    const shape = shapeOfDemand(series)
    return { ADI: shape?.interval ?? Number.NaN, CV2: shape?.variation ?? Number.NaN }
  },
  'ABC classification by annual value': ({ items }) => {
    const names = Object.keys(items)
    const ranks = rankByValue(
      names.map((name, partId) => ({ partId, pieces: 1, price: String(items[name]) })),
    )
    return Object.fromEntries(
      ['A', 'B', 'C'].map(rank => [rank, names.filter((_, partId) => ranks.get(partId) === rank)]),
    )
  },
  'seasonal indices, ratio': ({ monthsByYear }) => ({ index: seasonalIndices(monthsByYear) }),
  'seasonal indices, quarterly': ({ quarterMeans }) => ({
    index: seasonalIndices(quarterMeans.map(mean => [mean])),
  }),
}

/** Every figure that is both expected and computed lies within the value's own tolerance, and there is at least one. */
function check({ inputs, expected, tolerance }: ReferenceValue, compute: (inputs: Inputs) => Computed) {
  const computed = compute(inputs)
  if (typeof computed !== 'object' && typeof expected !== 'object') return near(computed, expected, tolerance)
  if (typeof computed !== 'object') throw new Error('a computation gives what its topic expects')
  if (typeof expected !== 'object') throw new Error('a computation gives what its topic expects')
  const names = Object.keys(expected).filter(name => name in computed)
  expect(names).not.toEqual([])
  for (const name of names) {
    const [wanted, found] = [listed(expected[name]), listed(computed[name])]
    expect(found, name).toHaveLength(wanted.length)
    for (const [at, value] of wanted.entries()) near(found[at] ?? Number.NaN, value, tolerance)
  }
}

function listed(found: Figure | readonly Figure[] | undefined): readonly Figure[] {
  return typeof found === 'object' ? found : [found ?? Number.NaN]
}

function near(found: number | string, wanted: number | string, tolerance: number) {
  if (typeof found === 'string' || typeof wanted === 'string') return expect(found).toBe(wanted)
  expect(Math.abs(found - wanted), `${found}, but ${wanted} is published`).toBeLessThanOrEqual(tolerance)
}

describe.each(Object.entries(computations))('%s', (topic, compute) => {
  test.each(
    valuesOn(topic).map(
      value => [`${value.id}: ${value.source.author}, ${value.source.title}`, value] as const,
    ),
  )('%s', (_title, value) => check(value, compute))
})

describe('EOQ', () => {
  const plain = valuesOn('EOQ').filter(({ topic }) => /^EOQ($| \(package|, cost, reorder)/.test(topic))
  test.each(plain.map(value => [value.id, value] as const))('%s', (_id, value) =>
    check(value, ({ K, h, d }) => {
      const costs = { perOrder: K, holding: h, yearly: d }
      return { Q: economicQuantity(costs), cost: costOfQuantity(costs, economicQuantity(costs)) }
    }),
  )
})
