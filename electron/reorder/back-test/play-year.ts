import { Big } from 'big.js'
import type { PlayedSetting } from '../../../shared-schemas/reorder-back-test.ts'
import { expectDemand, type PlannedPart, type ReviewRhythm, shareOutLevels } from '../levels/plan-levels.ts'
import { noOutcome, type PlayedPeriods, type ReviewLevels, simulateReview } from './simulate-review.ts'

/** A part that is played, with the price of a piece today as a decimal. */
export interface PlayedPart extends PlannedPart {
  readonly price: string | null
}

/** The levels of each part, in the order of the parts, at a period. */
export type LevelsOfPeriod = (period: number) => readonly (ReviewLevels | undefined)[]

/** How far back levels are made, and how often. */
export interface RolledPeriods extends PlayedPeriods {
  readonly refreshEvery: number
}

/**
 * Makes the levels of each target through the time that is played, those of a period of the periods before it. Gives way after each refresh, since a large shop takes
 * a while and others wait to be answered.
 */
export async function rollLevels(
  parts: readonly PlannedPart[],
  { targets, rhythm, periods }: { targets: readonly number[]; rhythm: ReviewRhythm; periods: RolledPeriods },
  giveWay: (done: number) => Promise<void>,
): Promise<(target: number) => LevelsOfPeriod> {
  const byTarget = new Map<number, (readonly ReviewLevels[])[]>(targets.map(target => [target, []]))
  for (let period = periods.from; period < periods.to; period += periods.refreshEvery) {
    const then = parts.map(part => ({ ...part, series: part.series.subarray(0, period) }))
    const expected = expectDemand(then, rhythm)
    for (const [target, levels] of byTarget) levels.push(shareOutLevels(expected, target).levels)
    await giveWay(period - periods.from)
  }
  return target => period =>
    byTarget.get(target)?.[Math.floor((period - periods.from) / periods.refreshEvery)] ?? []
}

export interface PlayTerms {
  readonly rhythm: ReviewRhythm
  readonly periods: PlayedPeriods
  /** Null plays levels that have no aim, and that order up to a level without regard to lots. */
  readonly target: number | null
}

/** Plays parts through by such levels, beginning with the first level on hand. A part without levels is left out. */
export function playParts(
  parts: readonly PlayedPart[],
  levels: LevelsOfPeriod,
  { rhythm, periods, target }: PlayTerms,
): PlayedSetting {
  const total = noOutcome()
  let value = new Big(0)
  const length = periods.to - periods.from
  for (const [at, part] of parts.entries()) {
    const first = levels(periods.from)[at]
    if (first === undefined) continue
    const before = total.stock
    simulateReview(
      {
        demand: part.series,
        leadPeriods: Math.round(part.leadDays / rhythm.daysPerBucket),
        onHand: first.orderUpTo,
        lot: target === null ? 1 : part.lot,
        levelsAt: period => levels(period)[at] ?? first,
      },
      periods,
      total,
    )
    if (part.price !== null) value = value.plus(new Big(part.price).times(total.stock - before))
  }
  return {
    targetFillRate: target,
    fillRate: total.asked === 0 ? 1 : total.given / total.asked,
    stockPieces: total.stock / length,
    stockValue: value.div(length).toFixed(2, Big.roundHalfUp),
    orders: total.orders,
    piecesOrdered: total.ordered,
  }
}
