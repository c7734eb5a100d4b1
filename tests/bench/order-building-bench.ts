import { buildOrders } from '../../electron/reorder/building/build-orders.ts'
import type { OrderProblem, PriceRow, WantedLine } from '../../electron/reorder/building/order-problem.ts'
import { openExactSolver } from '../../electron/reorder/building/solve-exactly.ts'
import { written } from './measure.ts'

/**
 * Orders for six suppliers with carriage, free carriage, minimum orders, packs and price breaks: a usual week of 200
 * lines, and 3,000 lines without and with a budget. The problems are generated, the same each time.
 */
export async function run(): Promise<void> {
  const solve = await openExactSolver()
  for (const [lines, share] of sizes) {
    const problem = makeProblem(lines, share)
    const before = process.cpuUsage()
    const start = performance.now()
    const built = buildOrders(problem, solve)
    const took = performance.now() - start
    const { user, system } = process.cpuUsage(before)
    const { kind, gap, gapShare } = built.proof
    const ordered = built.orders.reduce((sum, order) => sum + order.lines.length, 0)
    console.log(
      [
        `6 suppliers, ${lines} lines${share === null ? '' : `, budget ${share * 100} % of all`}: ${written(took)} ms (of the processor ${written((user + system) / 1000)})`,
        `${ordered} ordered for ${built.spend}`,
        kind === 'exact' ? 'proved best' : `at most ${gap} from the best (${(gapShare * 100).toFixed(4)} %)`,
        'wanted 5,000 ms for 3,000 lines',
      ].join('; '),
    )
  }
}

const sizes: readonly (readonly [lines: number, budgetShare: number | null])[] = [
  [200, null],
  [200, 0.6],
  [3000, null],
  [3000, 0.5],
]

function makeProblem(count: number, share: number | null): OrderProblem {
  const random = drawFrom(20_261_123)
  const suppliers = Array.from({ length: 6 }, (_, at) => ({
    supplier: `S${at + 1}`,
    carriage: (5 + at).toFixed(2),
    carriagePaidFrom: (150 + 100 * at).toFixed(2),
    minimumOrder: (20 + 10 * at).toFixed(2),
  }))
  const lines = Array.from({ length: count }, (_, at) => makeLine(at, random))
  const all = lines.reduce((sum, { need, offers }) => sum + need * Number(offers[0]?.rows[0]?.price), 0)
  return { suppliers, lines, budget: share === null ? null : (all * share).toFixed(2) }
}

function makeLine(at: number, random: () => number): WantedLine {
  const need = 1 + Math.floor(random() * 6)
  const usual = 2 + random() * 40
  const offers = Array.from({ length: 6 }, (_, supplier) => supplier)
    .filter(supplier => random() < 0.5 || supplier === at % 6)
    .map(supplier => ({
      offerId: `${at} of ${supplier}`,
      supplier: `S${supplier + 1}`,
      rows: makeRows(usual * (0.9 + 0.2 * random()), random),
    }))
  return {
    ...{ lineId: `line ${at}`, need, most: need + 6, offers },
    worth: (random() * usual * 3).toFixed(2),
    extraWorth: (usual * 0.6).toFixed(2),
  }
}

function makeRows(price: number, random: () => number): PriceRow[] {
  const pack = random() < 0.7 ? 1 : 5
  const first = { from: 1, price: price.toFixed(2), pack, minimum: 1 }
  return random() < 0.5 ? [first] : [first, { ...first, from: 10, price: (price * 0.92).toFixed(2) }]
}

/** Numbers between 0 and 1 from a linear congruence (the constants of Numerical Recipes). */
function drawFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}
