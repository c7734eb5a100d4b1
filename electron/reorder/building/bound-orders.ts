import type { ChoiceProblem } from './list-choices.ts'

/**
 * An amount, in units, below which no allowed order can come, given one that comes to `known`.
 *
 * For each way to say which suppliers are sent an order and which of these orders are free of carriage, the thresholds
 * and the budget are priced instead of demanded (Lagrangian relaxation; Held and Karp, Mathematical Programming 1, 1971;
 * Fisher, Management Science 27, 1981). Then every line chooses for itself, and whatever the prices, the sum is no more
 * than the best order of that way. The least of all ways is a bound for all orders, and is at least that of the linear
 * relaxation. Beyond six suppliers, the others are let off their carriage and minimum, which keeps the bound true.
 */
export function boundOrders(problem: ChoiceProblem, known: number): number {
  const flat = flatten(problem)
  const prices = { reach: problem.suppliers.map(() => 0), budget: priceOfBudget(problem, flat) }
  const ways = listWays(problem).map((way): WayState => {
    const { bound } = relax(problem, flat, way, prices)
    return { way, prices, bound, steps: 0, isDone: false }
  })
  let work = Math.floor(mostWork / Math.max(1, flat.supplier.length))
  for (;;) {
    const lowest = ways.reduce((least, state) => (state.bound < least.bound ? state : least))
    if (lowest.isDone || lowest.bound >= known || work <= 0) return Math.min(known, lowest.bound)
    work -= raisePrices(problem, flat, lowest, known)
  }
}

/** Choices looked at altogether: well below a second. */
const mostWork = 40_000_000
const stepsAtOnce = 20
const mostSteps = 120
const mostBranched = 6

interface Way {
  /** By supplier: whether it may be sent an order. */
  readonly open: readonly boolean[]
  /** By supplier: the value that its goods reach, or nought. */
  readonly reach: readonly number[]
  readonly carriage: number
}

/** For each supplier: no order, one that pays carriage, or one that reaches free carriage where there is such. */
function listWays({ suppliers }: ChoiceProblem): Way[] {
  const branched = suppliers
    .map(({ carriage, minimum }, at) => ({ at, weight: carriage + minimum / 1000 }))
    .filter(({ weight }) => weight > 0)
    .sort((one, other) => other.weight - one.weight)
    .slice(0, mostBranched)
  let ways: Way[] = [{ open: suppliers.map(() => true), reach: suppliers.map(() => 0), carriage: 0 }]
  for (const { at } of branched) {
    const terms = suppliers[at]
    if (terms === undefined) continue
    const { carriage, paidFrom, minimum } = terms
    ways = ways.flatMap(way => [
      { ...way, open: way.open.with(at, false) },
      { ...way, reach: way.reach.with(at, minimum), carriage: way.carriage + carriage },
      ...(carriage > 0 && Number.isFinite(paidFrom)
        ? [{ ...way, reach: way.reach.with(at, Math.max(minimum, paidFrom)) }]
        : []),
    ])
  }
  return ways
}

/** The choices one after the other, as the loops below read them. */
interface FlatChoices {
  readonly starts: Int32Array
  readonly supplier: Int32Array
  readonly cost: Float64Array
  readonly spend: Float64Array
}

function flatten({ lines }: ChoiceProblem): FlatChoices {
  const all = lines.flat()
  let end = 0
  return {
    starts: Int32Array.from([0, ...lines.map(choices => (end += choices.length))]),
    supplier: Int32Array.from(all, ({ supplier }) => supplier),
    cost: Float64Array.from(all, ({ cost }) => cost),
    spend: Float64Array.from(all, ({ spend }) => spend),
  }
}

/** What a unit short of each supplier's reach costs, and a unit above the budget. */
interface Prices {
  readonly reach: readonly number[]
  readonly budget: number
}

/** The price at which the lines of all suppliers, each choosing for itself, just keep to the budget; by halving. */
function priceOfBudget(problem: ChoiceProblem, flat: FlatChoices): number {
  const reach = problem.suppliers.map(() => 0)
  const way = { open: problem.suppliers.map(() => true), reach, carriage: 0 }
  const spendAt = (budget: number) => relax(problem, flat, way, { reach, budget }).spend
  if (spendAt(0) <= problem.budget) return 0
  let [low, high] = [0, 1]
  while (spendAt(high) > problem.budget && high < highestPrice) [low, high] = [high, high * 2]
  for (let step = 0; step < 30; step++) {
    const middle = (low + high) / 2
    if (spendAt(middle) > problem.budget) low = middle
    else high = middle
  }
  return high
}

const highestPrice = 2 ** 20

interface Relaxed {
  readonly bound: number
  readonly goods: readonly number[]
  readonly spend: number
}

function relax(problem: ChoiceProblem, flat: FlatChoices, way: Way, prices: Prices): Relaxed {
  const { starts, supplier, cost, spend } = flat
  const goods = problem.suppliers.map(() => 0)
  const rates = way.open.map((isOpen, at) =>
    isOpen ? prices.budget - (prices.reach[at] ?? 0) : Number.POSITIVE_INFINITY,
  )
  let bound = 0
  for (let line = 0; line + 1 < starts.length; line++) {
    let least = problem.leaveOut[line] ?? 0
    let best = -1
    for (let at = starts[line] ?? 0; at < (starts[line + 1] ?? 0); at++) {
      const rate = rates[supplier[at] ?? 0] ?? 0
      if (rate === Number.POSITIVE_INFINITY) continue
      const priced = (cost[at] ?? 0) + rate * (spend[at] ?? 0)
      if (priced >= least) continue
      least = priced
      best = at
    }
    bound += least
    if (best >= 0) goods[supplier[best] ?? 0] = (goods[supplier[best] ?? 0] ?? 0) + (spend[best] ?? 0)
  }
  for (const [at, reach] of way.reach.entries()) bound += reach * (prices.reach[at] ?? 0)
  if (prices.budget > 0) bound -= prices.budget * problem.budget
  return {
    bound: bound + way.carriage * (1 + prices.budget),
    goods,
    spend: goods.reduce((sum, value) => sum + value, 0) + way.carriage,
  }
}

interface WayState {
  readonly way: Way
  prices: Prices
  bound: number
  steps: number
  isDone: boolean
}

/** Some subgradient steps for one way (Polyak's length, halved as they go on). Says how many passes that took. */
function raisePrices(problem: ChoiceProblem, flat: FlatChoices, state: WayState, known: number): number {
  const { way } = state
  let prices = state.prices
  for (let step = 0; step < stepsAtOnce; step++) {
    const { bound, goods, spend } = relax(problem, flat, way, prices)
    if (bound > state.bound) {
      state.bound = bound
      state.prices = prices
    }
    if (state.bound >= known) return step + 1
    const short = way.reach.map((reach, at) => (way.open[at] && reach > 0 ? reach - (goods[at] ?? 0) : 0))
    const over = Number.isFinite(problem.budget) ? spend - problem.budget : 0
    const steepness = [...short, over].reduce((sum, part) => sum + part * part, 0)
    state.steps += 1
    if (steepness === 0 || state.steps >= mostSteps) {
      state.isDone = true
      return step + 1
    }
    const length = ((known - bound) * 0.97 ** state.steps) / steepness
    prices = {
      reach: short.map((part, at) => Math.max(0, (prices.reach[at] ?? 0) + length * part)),
      budget: Math.max(0, prices.budget + length * over),
    }
  }
  return stepsAtOnce
}
