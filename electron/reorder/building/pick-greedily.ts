import type { Choice, ChoiceProblem } from './list-choices.ts'
import { carriageOn, type Picked, type Weighed, weighOrder } from './weigh-order.ts'

/**
 * Good choices without a proof: for each set of suppliers that promises most, every line from the cheapest of them;
 * what does not fit the budget left out, the least worth for its money first; then single lines changed while that is
 * better, minimum orders filled up, and likewise what is sent free of carriage. Always an order that is allowed: at
 * worst nothing is ordered.
 */
export function pickGreedily(problem: ChoiceProblem): Picked {
  let best: Picked = problem.lines.map(() => undefined)
  let least = weighOrder(problem, best).objective
  for (const { open, atLeast } of listPromisingSets(problem)) {
    if (atLeast >= least) continue
    const picked = improve(problem, fillUp(problem, keepToBudget(problem, cheapestOf(problem, open))))
    const weighed = weighOrder(problem, picked)
    if (!weighed.isAllowed || weighed.objective >= least) continue
    best = picked
    least = weighed.objective
  }
  return best
}

const mostSets = 24

interface OpenSet {
  readonly open: readonly boolean[]
  /** What its lines and carriage would cost if all went well. */
  readonly hoped: number
  /** No order of these suppliers costs less: every line at its cheapest, and no carriage. */
  readonly atLeast: number
}

/** Sets of suppliers, those first that promise most. */
function listPromisingSets(problem: ChoiceProblem): OpenSet[] {
  const sets = problem.suppliers.length <= 8 ? listAllSets(problem) : listBySingleSteps(problem)
  return sets
    .map(open => promiseOf(problem, open))
    .sort((one, other) => one.hoped - other.hoped)
    .slice(0, mostSets)
}

function promiseOf(problem: ChoiceProblem, open: readonly boolean[]): OpenSet {
  const { objective, carriage } = weighOrder(problem, cheapestOf(problem, open))
  return { open, hoped: objective, atLeast: objective - carriage.reduce((sum, amount) => sum + amount, 0) }
}

function listAllSets({ suppliers }: ChoiceProblem): boolean[][] {
  return Array.from({ length: 2 ** suppliers.length }, (_, set) =>
    suppliers.map((_supplier, at) => (set & (1 << at)) !== 0),
  )
}

/** All of many suppliers, then one after the other closed whose absence costs least. */
function listBySingleSteps(problem: ChoiceProblem): boolean[][] {
  const sets = [problem.suppliers.map(() => true)]
  for (let open = sets[0] ?? []; open.some(Boolean); ) {
    const closer = open.flatMap((isOpen, at) => (isOpen ? [open.with(at, false)] : []))
    const costs = closer.map(set => promiseOf(problem, set).hoped)
    open = closer[costs.indexOf(Math.min(...costs))] ?? []
    sets.push(open)
  }
  return sets
}

function cheapestOf({ lines, leaveOut }: ChoiceProblem, open: readonly boolean[]): Picked {
  return lines.map((choices, line) => {
    let best: Choice | undefined
    for (const choice of choices)
      if (open[choice.supplier] && choice.cost < (best?.cost ?? leaveOut[line] ?? 0)) best = choice
    return best
  })
}

/** Leaves out what is worth least for its money until the rest is within the budget, then takes back what still fits. */
function keepToBudget(problem: ChoiceProblem, picked: Picked): Picked {
  const { leaveOut, budget } = problem
  if (weighOrder(problem, picked).spend <= budget) return picked
  const byWorth = picked
    .flatMap((choice, line) =>
      choice === undefined
        ? []
        : [{ choice, line, ratio: ((leaveOut[line] ?? 0) - choice.cost) / choice.spend }],
    )
    .sort((one, other) => other.ratio - one.ratio || one.line - other.line)
  const kept: (Choice | undefined)[] = picked.map(() => undefined)
  const goods = problem.suppliers.map(() => 0)
  let spend = 0
  for (const { choice, line } of byWorth) {
    const terms = problem.suppliers[choice.supplier]
    if (terms === undefined) continue
    const before = goods[choice.supplier] ?? 0
    const after = before + choice.spend
    const more = choice.spend + carriageOn(after, terms) - carriageOn(before, terms)
    if (spend + more > budget) continue
    kept[line] = choice
    goods[choice.supplier] = after
    spend += more
  }
  return kept
}

/** Brings each supplier's goods to its minimum, and to where carriage is free when that costs less than the carriage. */
function fillUp(problem: ChoiceProblem, picked: Picked): Picked {
  let filled = picked
  for (const [at, { carriage, paidFrom, minimum }] of problem.suppliers.entries()) {
    const { goods } = weighOrder(problem, filled)
    const has = goods[at] ?? 0
    if (has === 0) continue
    if (has < minimum) filled = moveTowards(problem, filled, { supplier: at, wanted: minimum, has })
    const reached = weighOrder(problem, filled)
    const now = reached.goods[at] ?? 0
    if (carriage === 0 || now >= paidFrom || !Number.isFinite(paidFrom)) continue
    const free = moveTowards(problem, filled, { supplier: at, wanted: paidFrom, has: now })
    const weighed = weighOrder(problem, free)
    if (weighed.objective < reached.objective && (weighed.isAllowed || !reached.isAllowed)) filled = free
  }
  return filled
}

/** Changes lines to this supplier, or to more pieces of it, the cheapest first for the value it brings, until it is enough. */
function moveTowards(
  { lines, leaveOut }: ChoiceProblem,
  picked: Picked,
  { supplier, wanted, has }: { readonly supplier: number; readonly wanted: number; readonly has: number },
): Picked {
  const steps = lines
    .flatMap((choices, line) => {
      const now = picked[line]
      const [cost, value] = [now?.cost ?? leaveOut[line] ?? 0, now?.supplier === supplier ? now.spend : 0]
      return choices
        .filter(choice => choice.supplier === supplier && choice.spend > value)
        .map(choice => ({ choice, line, brings: choice.spend - value, costs: choice.cost - cost }))
    })
    .sort((one, other) => one.costs / one.brings - other.costs / other.brings || one.line - other.line)
  const moved = [...picked]
  const done = new Set<number>()
  let value = has
  for (const { choice, line, brings } of steps) {
    if (value >= wanted) break
    if (done.has(line)) continue
    done.add(line)
    moved[line] = choice
    value += brings
  }
  return moved
}

const mostRounds = 4

/** Changes one line at a time to whatever makes the whole better, thresholds counted, until nothing does. */
function improve(problem: ChoiceProblem, picked: Picked): Picked {
  const improved = [...picked]
  let weighed = weighOrder(problem, improved)
  if (!weighed.isAllowed) return picked
  for (let round = 0; round < mostRounds; round++) {
    const before = weighed.objective
    for (const [line, choices] of problem.lines.entries())
      for (const choice of [...choices, undefined]) {
        const change = changeBy(problem, weighed, { line, from: improved[line], to: choice })
        if (change === undefined || change >= 0) continue
        improved[line] = choice
        weighed = weighOrder(problem, improved)
      }
    if (weighed.objective >= before) break
  }
  return improved
}

interface OneChange {
  readonly line: number
  readonly from: Choice | undefined
  readonly to: Choice | undefined
}

/** By how much the objective changes with one line; undefined where the order would not be allowed any more. */
function changeBy(
  { leaveOut, suppliers, budget }: ChoiceProblem,
  { goods, carriage, spend }: Weighed,
  { line, from, to }: OneChange,
): number | undefined {
  if (from === to) return undefined
  const out = leaveOut[line] ?? 0
  const costMore = (to?.cost ?? out) - (from?.cost ?? out)
  const saved = (carriage[from?.supplier ?? -1] ?? 0) + (carriage[to?.supplier ?? -1] ?? 0)
  if (costMore >= saved) return undefined
  const changed = new Map<number, number>()
  if (from !== undefined) changed.set(from.supplier, -from.spend)
  if (to !== undefined) changed.set(to.supplier, (changed.get(to.supplier) ?? 0) + to.spend)
  let [carriageMore, goodsMore] = [0, 0]
  for (const [at, more] of changed) {
    const terms = suppliers[at]
    if (terms === undefined) return undefined
    const [before, after] = [goods[at] ?? 0, (goods[at] ?? 0) + more]
    if (after > 0 && after < terms.minimum) return undefined
    carriageMore += carriageOn(after, terms) - carriageOn(before, terms)
    goodsMore += more
  }
  if (spend + goodsMore + carriageMore > budget) return undefined
  return costMore + carriageMore
}
