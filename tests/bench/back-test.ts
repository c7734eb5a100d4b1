import {
  noOutcome,
  type ReviewLevels,
  type ReviewOutcome,
  simulateReview,
} from '../../electron/reorder/back-test/simulate-review.ts'
import { daysPerMonth } from '../../electron/reorder/demand/time-buckets.ts'
import { expectDemand, shareOutLevels } from '../../electron/reorder/levels/plan-levels.ts'

/** Monthly demand of parts, and the months that are played: from one, counted from nought, up to but not with another. */
export interface BackTest {
  readonly parts: readonly Int32Array[]
  readonly from: number
  readonly to: number
  /** Months from an order until it can be taken. */
  readonly leadMonths: number
}

/** One setting, played through: what share was there when asked for, and the pieces on hand at the end of a month. */
export interface Played {
  readonly fillRate: number
  readonly stock: number
  readonly outcome: ReviewOutcome
}

type LevelsAt = (month: number, part: number) => ReviewLevels

/** Plays the months for every part, beginning with its first level on hand and nothing on order. */
export function play(test: BackTest, levelsAt: LevelsAt): Played {
  const outcome = noOutcome()
  for (const [part, demand] of test.parts.entries())
    simulateReview(
      {
        demand,
        leadPeriods: test.leadMonths,
        onHand: levelsAt(test.from, part).orderUpTo,
        levelsAt: month => levelsAt(month, part),
      },
      test,
      outcome,
    )
  return { fillRate: outcome.given / outcome.asked, stock: outcome.stock / (test.to - test.from), outcome }
}

/** Ours, for each target: the levels of a month are made of the months before it and nothing else. */
export function playOurs(test: BackTest, targets: readonly number[]): Played[] {
  const levels = new Map<number, ReviewLevels[][]>(targets.map(target => [target, []]))
  for (let month = test.from; month < test.to; month++) {
    const expected = expectDemand(
      test.parts.map((demand, partId) => ({
        ...{ partId, series: demand.subarray(0, month), leadDays: test.leadMonths * daysPerMonth },
        ...{ leadDaysDeviation: 0, lot: 1, shelfLimit: null },
      })),
      { daysPerBucket: daysPerMonth, reviewDays: daysPerMonth },
    )
    for (const [target, byMonth] of levels) byMonth[month] = [...shareOutLevels(expected, target).levels]
  }
  return targets.map(target =>
    play(test, (month, part) => levels.get(target)?.[month]?.[part] ?? { reorderPoint: 0, orderUpTo: 0 }),
  )
}

/** What shops do without reckoning, each with a factor that is tuned. */
export const rulesOfThumb = {
  'up to k times the highest month of the last year': ({ highest }, k) => upTo(k * highest),
  "up to k months' cover": ({ mean }, k) => upTo(k * mean),
  'from k up to 2 k months': ({ mean }, k) => ({
    reorderPoint: whole(k * mean),
    orderUpTo: whole(2 * k * mean),
  }),
} satisfies Record<string, (year: Year, k: number) => ReviewLevels>
export type RuleOfThumb = keyof typeof rulesOfThumb

interface Year {
  readonly highest: number
  readonly mean: number
}

/** One rule of thumb over a range of factors. */
export function playRule(test: BackTest, rule: RuleOfThumb): Played[] {
  const years = test.parts.map(demand =>
    Array.from({ length: test.to }, (_, month) => lastYear(demand, month)),
  )
  const none = { highest: 0, mean: 0 }
  return factors.map(k => play(test, (month, part) => rulesOfThumb[rule](years[part]?.[month] ?? none, k)))
}

const factors = Array.from({ length: 36 }, (_, at) => 0.7 * 1.1 ** at)

function lastYear(demand: Int32Array, month: number): Year {
  const year = demand.subarray(Math.max(0, month - 12), month)
  let [sum, highest] = [0, 0]
  for (const pieces of year) [sum, highest] = [sum + pieces, Math.max(highest, pieces)]
  return { highest, mean: year.length === 0 ? 0 : sum / year.length }
}

/** Rounded up, which serves these rules best. */
function whole(pieces: number): number {
  return Math.ceil(pieces - 1e-9)
}

function upTo(pieces: number): ReviewLevels {
  return { reorderPoint: whole(pieces), orderUpTo: whole(pieces) }
}

/** The stock with which a family of settings reaches a fill rate, on the line between the two nearest; NaN where none does. */
export function stockAt(played: readonly Played[], fillRate: number): number {
  const sorted = played.toSorted((one, other) => one.fillRate - other.fillRate)
  const above = sorted.findIndex(point => point.fillRate >= fillRate)
  const [low, high] = [sorted[above - 1], sorted[above]]
  if (low === undefined || high === undefined) return Number.NaN
  const share = (fillRate - low.fillRate) / (high.fillRate - low.fillRate)
  return low.stock + share * (high.stock - low.stock)
}
