import type { Choice, ChoiceProblem } from './list-choices.ts'

/** One choice for each line, or none where it is left out. */
export type Picked = readonly (Choice | undefined)[]

export interface Weighed {
  /** By supplier: the value of the goods, and the carriage on them. */
  readonly goods: readonly number[]
  readonly carriage: readonly number[]
  /** What all suppliers are paid, carriage included. */
  readonly spend: number
  /** What is to be least: costs, carriage, and what leaving lines out counts for. */
  readonly objective: number
  /** Whether every order reaches its supplier's minimum and all together keep to the budget. */
  readonly isAllowed: boolean
}

/** What the picked choices come to, in whole units and exactly: the one place where an order is reckoned. */
export function weighOrder({ leaveOut, suppliers, budget }: ChoiceProblem, picked: Picked): Weighed {
  const goods = suppliers.map(() => 0)
  let objective = 0
  for (const [line, choice] of picked.entries()) {
    objective += choice?.cost ?? leaveOut[line] ?? 0
    if (choice !== undefined) goods[choice.supplier] = (goods[choice.supplier] ?? 0) + choice.spend
  }
  const carriage = suppliers.map((terms, at) => carriageOn(goods[at] ?? 0, terms))
  const allCarriage = sum(carriage)
  const spend = sum(goods) + allCarriage
  const reachesAll = suppliers.every(({ minimum }, at) => goods[at] === 0 || (goods[at] ?? 0) >= minimum)
  return {
    ...{ goods, carriage, spend },
    objective: objective + allCarriage,
    isAllowed: reachesAll && spend <= budget,
  }
}

export function carriageOn(
  goods: number,
  { carriage, paidFrom }: { readonly carriage: number; readonly paidFrom: number },
): number {
  return goods === 0 || goods >= paidFrom ? 0 : carriage
}

function sum(amounts: readonly number[]): number {
  return amounts.reduce((total, amount) => total + amount, 0)
}
