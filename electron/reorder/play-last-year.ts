import { setImmediate as nextTurn } from 'node:timers/promises'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { PlayedYear } from '../../shared-schemas/reorder-back-test.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { Task } from '../requests/handlers.ts'
import { readBookCurrency } from '../stock-ledger/last-paid-queries.ts'
import { partNumbered } from '../stock-ledger/named-things.ts'
import { type LevelsOfPeriod, type PlayedPart, playParts, rollLevels } from './back-test/play-year.ts'
import { listPresentLevels } from './back-test/present-levels.ts'
import type { ReviewLevels } from './back-test/simulate-review.ts'
import type { ReviewRhythm } from './levels/plan-levels.ts'
import { listShelfLimits, listVanLevels } from './plan-queries.ts'
import { asPlanned, type PlanFacts, type PlanningShop, readPlanFacts } from './plan-stock.ts'

/** What the asked fill rate and those around it would have done over the last year, beside the shop's present levels. */
export async function playLastYear(
  shop: PlanningShop,
  asked: CheckedInput<'reorder.play-last-year'>,
  task: Task,
): Promise<Output<'reorder.play-last-year'>> {
  const facts = readPlanFacts(shop, asked)
  const { aim, demand } = facts
  const sold = listSold(facts)
  const parts = takeEverySoMany(sold)
  const periods = periodsOf(demand.buckets.starts.length, aim)
  const buckets = periods.to - periods.from
  const found = {
    ...{ asOf: facts.asOf, bucket: demand.buckets.bucket, buckets },
    ...{ parts: parts.length, ofParts: sold.length, currency: readBookCurrency(shop.database) ?? null },
  }
  if (buckets === 0) return { ...found, setting: null, curve: [], present: null }
  const targets = [...new Set([...curveTargets, aim.fillRate])].sort((one, other) => one - other)
  const levelsFor = await rollLevels(parts, { targets, rhythm: aim, periods }, async done => {
    task.report({ what: demand.buckets.bucket, done, expected: buckets })
    await nextTurn()
  })
  const terms = { rhythm: aim, periods }
  const curve = targets.map(target => playParts(parts, levelsFor(target), { ...terms, target }))
  return {
    ...found,
    setting: curve[targets.indexOf(aim.fillRate)] ?? null,
    curve,
    present: playPresent(parts, {
      ...presentOf(shop.database, asked.present),
      ...{ terms, ours: levelsFor(aim.fillRate), target: aim.fillRate },
    }),
  }
}

/** From little to nearly all: the points among which a buyer picks. */
const curveTargets = [0.8, 0.85, 0.9, 0.925, 0.95, 0.97, 0.98, 0.99]

/** What was ever asked for, and is still its own number. */
function listSold({ parts }: PlanFacts): PlayedPart[] {
  return parts.flatMap(part =>
    part.series === undefined ? [] : [{ ...asPlanned(part, part.series), price: part.offer?.price ?? null }],
  )
}

/** A large shop shows what it shows on every so many of its parts. */
function takeEverySoMany<Part>(parts: readonly Part[]): readonly Part[] {
  const step = Math.ceil(parts.length / mostPlayed)
  return step <= 1 ? parts : parts.filter((_, at) => at % step === 0)
}

const mostPlayed = 4_000

/** The last year, or less of it where the first quarter of a year of the history would be among it. */
function periodsOf(length: number, { daysPerBucket, reviewDays }: ReviewRhythm) {
  const [year, quarter, month] = [365, 91, 30].map(days => Math.max(1, Math.round(days / daysPerBucket)))
  const from = Math.max(length - (year ?? 0), quarter ?? 0)
  return {
    from: Math.min(from, length),
    to: length,
    refreshEvery: month ?? 1,
    reviewEvery: Math.max(1, Math.round(reviewDays / daysPerBucket)),
  }
}

interface Present {
  readonly from: 'given' | 'lists'
  readonly levels: ReadonlyMap<number, ReviewLevels>
}

function presentOf(
  database: ReadableDatabase,
  given: CheckedInput<'reorder.play-last-year'>['present'],
): Present {
  if (given !== undefined) {
    const levels = given.map(({ part, minimum, maximum }) => {
      const level: ReviewLevels = { reorderPoint: minimum, orderUpTo: maximum }
      return [partNumbered(database, part).partId as number, level] as const
    })
    return { from: 'given', levels: new Map(levels) }
  }
  const listed = new Map<number, number>()
  for (const { partId, level } of listVanLevels(database))
    if (partId !== null) listed.set(partId, (listed.get(partId) ?? 0) + level)
  return { from: 'lists', levels: listPresentLevels({ listed, shelfLimits: listShelfLimits(database) }) }
}

/** Both on the parts that have a present level, so that the two can be compared. */
function playPresent(
  parts: readonly PlayedPart[],
  {
    from,
    levels,
    terms,
    ours,
    target,
  }: Present & {
    readonly terms: Omit<Parameters<typeof playParts>[2], 'target'>
    readonly ours: LevelsOfPeriod
    readonly target: number
  },
): PlayedYear['present'] {
  const theirs = parts.map(({ partId }) => levels.get(partId))
  const same = parts.filter(({ partId }) => levels.has(partId))
  if (same.length === 0) return null
  const where = parts.flatMap(({ partId }, at) => (levels.has(partId) ? [at] : []))
  return {
    ...{ from, parts: same.length },
    theirs: playParts(parts, () => theirs, { ...terms, target: null }),
    ours: playParts(same, pickedFrom(ours, where), { ...terms, target }),
  }
}

/** The levels of some of the parts, picked once for each period. */
function pickedFrom(levels: LevelsOfPeriod, where: readonly number[]): LevelsOfPeriod {
  const picked = new Map<number, readonly (ReviewLevels | undefined)[]>()
  return period => {
    const known = picked.get(period) ?? where.map(at => levels(period)[at])
    picked.set(period, known)
    return known
  }
}
