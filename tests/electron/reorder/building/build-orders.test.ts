import fc from 'fast-check'
import { beforeAll, describe, expect, test } from 'vitest'
import { boundOrders } from '../../../../electron/reorder/building/bound-orders.ts'
import { type BuiltOrders, buildOrders } from '../../../../electron/reorder/building/build-orders.ts'
import { listChoices } from '../../../../electron/reorder/building/list-choices.ts'
import type { OrderProblem, WantedLine } from '../../../../electron/reorder/building/order-problem.ts'
import { pickGreedily } from '../../../../electron/reorder/building/pick-greedily.ts'
import { openExactSolver, type SolveExactly } from '../../../../electron/reorder/building/solve-exactly.ts'
import { weighOrder } from '../../../../electron/reorder/building/weigh-order.ts'
import { hundredths, leastByTrying } from './enumerate-orders.ts'
import { smallProblem } from './order-problems.ts'

let solve: SolveExactly
beforeAll(async () => {
  solve = await openExactSolver()
})

describe('against trying every order', () => {
  test('a small order is the best there is, four hundred times over', () => {
    fc.assert(
      fc.property(smallProblem, problem => {
        const built = buildOrders(problem, solve)
        expect(reckon(problem, built)).toBe(leastByTrying(problem))
        expect(built.proof).toEqual({ kind: 'exact', gap: '0.00', gapShare: 0 })
      }),
      { numRuns: 400 },
    )
  }, 10_000)

  test('the mixed-integer program alone finds the best of three hundred and its bound is the best', () => {
    fc.assert(
      fc.property(smallProblem, problem => {
        const choices = listChoices(problem)
        const solved = solve(choices)
        const least = leastByTrying(problem) * 100
        expect(solved?.bound).toBe(least)
        expect(weighOrder(choices, solved?.picked ?? [])).toMatchObject({ objective: least, isAllowed: true })
      }),
      { numRuns: 300 },
    )
  }, 20_000)

  test('without the solver, the order is allowed and no further from the best than is told', () => {
    fc.assert(
      fc.property(smallProblem, problem => {
        const built = buildOrders(problem, undefined)
        const [reached, best] = [reckon(problem, built), leastByTrying(problem)]
        expect(reached).toBeGreaterThanOrEqual(best)
        expect(reached - hundredths(built.proof.gap)).toBeLessThanOrEqual(best + 1)
      }),
      { numRuns: 400 },
    )
  }, 10_000)

  test('the bound is below every order, and the quick order is the best in most cases', () => {
    let best = 0
    let tried = 0
    fc.assert(
      fc.property(smallProblem, problem => {
        const choices = listChoices(problem)
        const weighed = weighOrder(choices, pickGreedily(choices))
        const least = leastByTrying(problem)
        expect(boundOrders(choices, weighed.objective)).toBeLessThanOrEqual(least * 100 + 0.5)
        tried += 1
        if (Math.round(weighed.objective / 100) === least) best += 1
      }),
      { numRuns: 300 },
    )
    expect(best / tried).toBeGreaterThan(0.8)
  }, 10_000)
})

/** What an order comes to by the rules, in hundredths, from nothing but what it says. A rule that it breaks fails the test. */
function reckon({ suppliers, lines, budget }: OrderProblem, built: BuiltOrders): number {
  let [objective, spend] = [0, 0]
  const seen = new Set<string>()
  for (const order of built.orders) {
    const terms = suppliers.find(({ supplier }) => supplier === order.supplier)
    let goods = 0
    for (const { lineId, quantity, price, offerId } of order.lines) {
      const line = lines.find(candidate => candidate.lineId === lineId)
      const row = line?.offers
        .find(offer => offer.offerId === offerId && offer.supplier === order.supplier)
        ?.rows.findLast(({ from }) => from <= quantity)
      if (line === undefined || row === undefined) throw new Error(`${lineId} is not offered so`)
      expect([quantity % row.pack, price, seen.has(lineId)]).toEqual([0, row.price, false])
      expect(quantity).toBeGreaterThanOrEqual(Math.max(line.need, row.minimum))
      seen.add(lineId)
      goods += quantity * hundredths(price)
      objective -= hundredths(line.extraWorth) * (quantity - line.need)
    }
    expect(hundredths(order.goods)).toBe(goods)
    if (terms?.minimumOrder) expect(goods).toBeGreaterThanOrEqual(hundredths(terms.minimumOrder))
    const isFree = terms?.carriagePaidFrom && goods >= hundredths(terms.carriagePaidFrom)
    expect(hundredths(order.carriage)).toBe(isFree ? 0 : hundredths(terms?.carriage ?? '0'))
    spend += goods + hundredths(order.carriage)
  }
  expect(hundredths(built.spend)).toBe(spend)
  if (budget !== null) expect(spend).toBeLessThanOrEqual(hundredths(budget))
  const out = lines.filter(({ lineId }) => !seen.has(lineId))
  expect(built.leftOut.map(({ lineId }) => lineId)).toEqual(out.map(({ lineId }) => lineId))
  return objective + spend + out.reduce((sum, line) => sum + outOf(line), 0)
}

function outOf(line: WantedLine): number {
  const choices = listChoices({
    suppliers: line.offers.map(({ supplier }) => ({
      ...{ supplier, carriage: null, carriagePaidFrom: null, minimumOrder: null },
    })),
    lines: [line],
    budget: null,
  })
  return Math.round((choices.leaveOut[0] ?? 0) / 100)
}

const dale = { supplier: 'DALE', carriage: '6.00', carriagePaidFrom: '50.00', minimumOrder: null }
const holm = { supplier: 'HOLM', carriage: '4.50', carriagePaidFrom: null, minimumOrder: '20.00' }

const one = { from: 1, pack: 1, minimum: 1 }
const offerOf = (supplier: string, ...rows: WantedLine['offers'][number]['rows']) => ({
  ...{ offerId: supplier, supplier, rows },
})

function line(lineId: string, more: Partial<WantedLine>): WantedLine {
  return { lineId, need: 1, most: 1, worth: '100.00', extraWorth: '0', offers: [], ...more }
}

interface Expected {
  readonly orders?: readonly string[]
  readonly leftOut?: readonly string[]
  readonly spend?: string
}

function check(given: OrderProblem, expected: Expected): void {
  for (const solver of [solve, undefined]) {
    const { orders, leftOut, spend } = buildOrders(given, solver)
    const found: Expected = {
      orders: orders.flatMap(order =>
        order.lines.map(
          ({ lineId, quantity, price }) => `${order.supplier} ${quantity} ${lineId} at ${price}`,
        ),
      ),
      leftOut: leftOut.map(({ lineId, why }) => `${lineId}: ${why}`),
      spend,
    }
    expect(found).toMatchObject(expected)
  }
}

test('a dearer line goes to the supplier who is sent an order anyway, when that saves the carriage', () => {
  const lines = [
    line('pump', { offers: [offerOf('DALE', { ...one, price: '30.00' })] }),
    line('belt', {
      offers: [offerOf('DALE', { ...one, price: '9.00' }), offerOf('HOLM', { ...one, price: '8.00' })],
    }),
  ]
  check(
    { suppliers: [dale, holm], lines, budget: null },
    { orders: ['DALE 1 pump at 30.00', 'DALE 1 belt at 9.00'], spend: '45.00' },
  )
})

test('more pieces are taken when they bring the order to where carriage is free for less than the carriage', () => {
  const lines = [
    line('pump', {
      need: 3,
      most: 5,
      extraWorth: '10.00',
      offers: [offerOf('DALE', { ...one, price: '13.00' })],
    }),
  ]
  check({ suppliers: [dale], lines, budget: null }, { orders: ['DALE 4 pump at 13.00'], spend: '52.00' })
})

test('a price for ten and more holds for all pieces, and is taken when all of them together cost less', () => {
  const rows = [
    { ...one, price: '1.30' },
    { ...one, from: 10, price: '1.00' },
  ]
  const lines = [line('hose', { need: 8, most: 12, offers: [offerOf('HOLM', ...rows)] })]
  const holmFree = { ...holm, minimumOrder: null, carriage: null }
  check({ suppliers: [holmFree], lines, budget: null }, { orders: ['HOLM 10 hose at 1.00'], spend: '10.00' })
})

test('what cannot reach a minimum order is left for later, and said so', () => {
  const lines = [line('clip', { offers: [offerOf('HOLM', { ...one, price: '0.40' })] })]
  check(
    { suppliers: [holm], lines, budget: null },
    { orders: [], leftOut: ['clip: minimum-order'], spend: '0.00' },
  )
})

test('when the budget does not suffice, what is worth least for its money waits', () => {
  const offers = (price: string) => [offerOf('FREE', { ...one, price })]
  const free = { supplier: 'FREE', carriage: null, carriagePaidFrom: null, minimumOrder: null }
  const lines = [
    line('for a job', { worth: '500.00', offers: offers('40.00') }),
    line('slow', { worth: '1.00', offers: offers('30.00') }),
    line('quick', { worth: '9.00', offers: offers('20.00') }),
  ]
  check(
    { suppliers: [free], lines, budget: '65.00' },
    { orders: ['FREE 1 for a job at 40.00', 'FREE 1 quick at 20.00'], leftOut: ['slow: budget'] },
  )
})

test('a line that nobody offers is left out and said so', () => {
  check(
    { suppliers: [dale], lines: [line('ghost', {})], budget: null },
    { orders: [], leftOut: ['ghost: no-offer'], spend: '0.00' },
  )
})

test('prices of a tenth of a penny add up exactly', () => {
  const lines = [line('pin', { need: 3, most: 3, offers: [offerOf('HOLM', { ...one, price: '0.1235' })] })]
  const holmFree = { ...holm, minimumOrder: null, carriage: null }
  check({ suppliers: [holmFree], lines, budget: null }, { spend: '0.3705' })
})
