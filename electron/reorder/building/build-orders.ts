import { boundOrders } from './bound-orders.ts'
import { type Choice, type ChoiceProblem, listChoices } from './list-choices.ts'
import { fromUnits } from './money-units.ts'
import type { OrderProblem, WantedLine } from './order-problem.ts'
import { pickGreedily } from './pick-greedily.ts'
import type { Solved, SolveExactly } from './solve-exactly.ts'
import { type Picked, type Weighed, weighOrder } from './weigh-order.ts'

export interface BuiltOrder {
  readonly supplier: string
  readonly lines: readonly BuiltLine[]
  /** Value of the goods, and the carriage on them, as exact decimals. */
  readonly goods: string
  readonly carriage: string
}

export interface BuiltLine {
  readonly lineId: string
  readonly offerId: string
  readonly quantity: number
  readonly price: string
}

export interface LeftOut {
  readonly lineId: string
  /** No offer; the budget does not suffice; no order would reach a supplier's minimum; or it would cost more than it is worth. */
  readonly why: 'no-offer' | 'budget' | 'minimum-order' | 'not-worth-it'
}

export interface BuiltOrders {
  readonly orders: readonly BuiltOrder[]
  readonly leftOut: readonly LeftOut[]
  /** What all orders cost, carriage included. */
  readonly spend: string
  /** Whether nothing better is possible, or how much better it might be at most. */
  readonly proof: {
    /** `exact`: proved best. `bounded`: by no more than `gap` from the best. */
    readonly kind: 'exact' | 'bounded'
    /** As an exact decimal: what a better order might save at most, worth of lines counted. */
    readonly gap: string
    /** The same as a share of what is weighed. */
    readonly gapShare: number
  }
}

/**
 * The orders of least cost: which supplier for each line, in which quantity, with packs, minimums, price breaks for all
 * pieces, carriage and where it is free, minimum orders and a budget. Small problems are solved to a proof; larger ones
 * well, with how far from the best they may be at most. What comes out is reckoned exactly and held to every rule again.
 */
export function buildOrders(problem: OrderProblem, solveExactly: SolveExactly | undefined): BuiltOrders {
  const lines = problem.lines.filter(({ offers }) => offers.length > 0)
  const choices = listChoices({ ...problem, lines })
  const { picked, bound } = decide(choices, solveExactly)
  const weighed = weighOrder(choices, picked)
  if (!weighed.isAllowed) throw new Error('orders reach every minimum and keep to the budget')
  const gap = Math.max(0, Math.ceil(weighed.objective - bound - roundingUnits))
  const noOffer = problem.lines.filter(({ offers }) => offers.length === 0)
  return {
    orders: problem.suppliers.flatMap(({ supplier }, at) => {
      const chosen = picked.filter(choice => choice !== undefined).filter(choice => choice.supplier === at)
      return chosen.length === 0
        ? []
        : [
            {
              supplier,
              lines: chosen.map(choice => asLine(choice, lines)),
              goods: fromUnits(weighed.goods[at] ?? 0),
              carriage: fromUnits(weighed.carriage[at] ?? 0),
            },
          ]
    }),
    leftOut: [
      ...noOffer.map(({ lineId }) => ({ lineId, why: 'no-offer' as const })),
      ...lines.flatMap(({ lineId }, at) =>
        picked[at] === undefined ? [{ lineId, why: whyLeftOut(choices, picked, weighed, at) }] : [],
      ),
    ],
    spend: fromUnits(weighed.spend),
    proof: {
      kind: gap === 0 ? 'exact' : 'bounded',
      gap: fromUnits(gap),
      gapShare: weighed.objective > 0 ? gap / weighed.objective : 0,
    },
  }
}

function asLine({ line, offer, quantity, row }: Choice, lines: readonly WantedLine[]): BuiltLine {
  const wanted = lines[line]
  if (wanted === undefined) throw new Error(`a choice is of one of the lines, but ${line} is none`)
  return { lineId: wanted.lineId, offerId: offer.offerId, quantity, price: row.price }
}

/** Beyond so many choices a proof takes too long for a Monday morning. */
const mostChoicesForProof = 2500
/** Bounds are reckoned in floating point; half a unit is far above what that loses and below any difference of orders. */
const roundingUnits = 0.5

function decide(problem: ChoiceProblem, solveExactly: SolveExactly | undefined): Solved {
  const greedy = pickGreedily(problem)
  const known = weighOrder(problem, greedy).objective
  const bound = boundOrders(problem, known)
  const size = problem.lines.reduce((sum, { length }) => sum + length, 0)
  const isProved = known - bound <= roundingUnits
  const solved = isProved || size > mostChoicesForProof ? undefined : solveExactly?.(problem)
  if (solved === undefined) return { picked: greedy, bound }
  const weighed = weighOrder(problem, solved.picked)
  const isBetter = weighed.isAllowed && weighed.objective < known
  return { picked: isBetter ? solved.picked : greedy, bound: Math.max(bound, solved.bound) }
}

/** Whether it is the money, the minimum order of all who offer it, or that it would cost more than it is worth. */
function whyLeftOut(
  { lines, leaveOut, suppliers, budget }: ChoiceProblem,
  picked: Picked,
  { goods, spend }: Weighed,
  at: number,
): LeftOut['why'] {
  const choices = lines[at] ?? []
  if (choices.every(choice => spend + choice.spend > budget)) return 'budget'
  const reaches = (choice: Choice) =>
    (goods[choice.supplier] ?? 0) + choice.spend >= (suppliers[choice.supplier]?.minimum ?? 0)
  if (!choices.some(reaches)) return 'minimum-order'
  const isWanted = choices.some(choice => choice.cost <= (leaveOut[at] ?? 0) && picked[at] === undefined)
  return Number.isFinite(budget) && isWanted ? 'budget' : 'not-worth-it'
}
