import { classifyDemand, type DemandClass, shapeOfDemand } from '../demand/classify-demand.ts'
import { type Series, unknown } from '../demand/gather-series.ts'
import { gammaDemand } from '../distributions/continuous-demand.ts'
import { negativeBinomialDemand } from '../distributions/whole-demand.ts'
import { type Blend, blendMean, fitBlend, sizeSpreadOf } from '../forecast/fit-blend.ts'
import { decaysOf, type SmoothedHistory, smoothHistory } from '../forecast/smooth-history.ts'
import { type KeptPart, shareOutStock } from './share-out-stock.ts'
import { averageOverLot, type ShortageCurve, type SpreadDemand, shortageByStock } from './shortage-curve.ts'

/** What the levels of a part are made from. */
export interface PlannedPart {
  readonly partId: number
  readonly series: Series
  readonly leadDays: number
  readonly leadDaysDeviation: number
  /** Pieces that are ordered together. */
  readonly lot: number
  /** Pieces that the shelf holds; null is no limit. */
  readonly shelfLimit: number | null
}

export interface LevelAim {
  readonly fillRate: number
  readonly daysPerBucket: number
  readonly reviewDays: number
}

export interface PlannedLevel {
  readonly partId: number
  readonly demandClass: DemandClass
  readonly meanPerBucket: number
  readonly deviationPerBucket: number
  readonly reorderPoint: number
  readonly orderUpTo: number
  readonly expectedFillRate: number
  readonly cycleService: number
}

export interface PlannedLevels {
  readonly levels: readonly PlannedLevel[]
  /** Of all parts together. */
  readonly expectedFillRate: number
  readonly blend: Blend
}

/** Of a part that nobody ever asked for. */
export function noLevel(partId: number): PlannedLevel {
  return {
    partId,
    demandClass: 'none',
    meanPerBucket: 0,
    deviationPerBucket: 0,
    reorderPoint: 0,
    orderUpTo: 0,
    expectedFillRate: 1,
    cycleService: 1,
  }
}

/** The levels of all parts at the end of their series, which are of one length. Nothing but the series is learned from. */
export function planLevels(parts: readonly PlannedPart[], aim: LevelAim): PlannedLevels {
  const terms = parts.map(part => ({ part, ...protectionOf(part, aim) }))
  const blend = fitBlend(
    parts.map(({ series }) => series),
    { daysPerBucket: aim.daysPerBucket, horizons: horizonsOf(terms) },
  )
  const decays = decaysOf(aim.daysPerBucket)
  const drafts = terms.map(term => {
    const [history] = smoothHistory(term.part.series, decays, [term.part.series.length])
    return { ...term, history, mean: history === undefined ? 0 : blendMean(blend, history) }
  })
  const scale = scaleOfSizes(drafts, blend)
  const curves = drafts.map(draft => ({ ...draft, ...demandOf(draft, blend, scale) }))
  const kept = curves.map(draft => keep(draft, aim))
  const entries = shareOutStock(kept, aim.fillRate)
  const levels = curves.map((draft, at) => settle(draft, kept[at], entries[at] ?? 0))
  const asked = kept.reduce((sum, { mean }) => sum + mean, 0)
  const short = kept.reduce((sum, part, at) => sum + (part.short[entries[at] ?? 0] ?? 0), 0)
  return { levels, blend, expectedFillRate: asked <= 0 ? 1 : 1 - short / asked }
}

interface Term {
  readonly part: PlannedPart
  /** In buckets. */
  readonly leadTime: number
  readonly leadTimeDeviation: number
  readonly protection: number
}

function protectionOf(part: PlannedPart, { daysPerBucket, reviewDays }: LevelAim): Omit<Term, 'part'> {
  const leadTime = inBuckets(part.leadDays, daysPerBucket)
  return {
    leadTime,
    leadTimeDeviation: part.leadDaysDeviation / daysPerBucket,
    protection: leadTime + inBuckets(reviewDays, daysPerBucket),
  }
}

/** Months are 28 to 31 days long, and a month is meant by each of these. */
function inBuckets(days: number, daysPerBucket: number): number {
  const exact = days / daysPerBucket
  const whole = Math.round(exact)
  return whole > 0 && daysPerBucket > 7 && Math.abs(exact - whole) <= 0.1 * whole ? whole : exact
}

/** The whole numbers of buckets over which spreads are needed, those of most parts first. */
function horizonsOf(terms: readonly Term[]): number[] {
  const counts = new Map<number, number>()
  for (const { leadTime, protection } of terms)
    for (const horizon of [wholeHorizon(protection), wholeHorizon(leadTime)])
      counts.set(horizon, (counts.get(horizon) ?? 0) + 1)
  return [...counts].sort((one, other) => other[1] - one[1] || other[0] - one[0]).map(([horizon]) => horizon)
}

function wholeHorizon(buckets: number): number {
  return Math.max(1, Math.round(buckets))
}

interface Draft extends Term {
  readonly history: SmoothedHistory | undefined
  readonly mean: number
}

/** What a part's size spread is divided by, so that the spread of all demand together stays what was seen. */
function scaleOfSizes(drafts: readonly Draft[], { pool }: Blend): number {
  let [weighted, means] = [0, 0]
  for (const { history, mean } of drafts) {
    if (history === undefined) continue
    weighted += mean * sizeSpreadOf(history, pool)
    means += mean
  }
  return means > 0 ? weighted / means : 1
}

/** Demand over the lead time and over lead time and review; a lead time that varies adds to the variance of both. */
function demandOf(
  { history, mean, leadTime, leadTimeDeviation, protection }: Draft,
  blend: Blend,
  scale: number,
) {
  const size = history === undefined ? 1 : sizeSpreadOf(history, blend.pool) / scale
  const over = (buckets: number): SpreadDemand => ({
    mean: mean * buckets,
    ratio: Math.max(
      leastRatio,
      size * blend.spreadOver(wholeHorizon(buckets)) +
        (buckets > 0 ? (mean * leadTimeDeviation ** 2) / buckets : 0),
    ),
  })
  return { overLeadTime: over(leadTime), overProtection: over(protection), perBucket: over(1) }
}

/** Demand that varies less than Poisson demand is not looked for in parts that break. */
const leastRatio = 1.05

interface Curve extends Draft {
  readonly overLeadTime: SpreadDemand
  readonly overProtection: SpreadDemand
  readonly perBucket: SpreadDemand
}

function keep(draft: Curve, { daysPerBucket }: LevelAim): KeptPart & ShortageCurve {
  const { part, mean, overLeadTime, overProtection } = draft
  const curve = averageOverLot(shortageByStock(overLeadTime, overProtection), part.lot)
  const asked = overProtection.mean - overLeadTime.mean
  const yearly = (mean * 365.2425) / daysPerBucket
  const room = part.shelfLimit === null ? Number.POSITIVE_INFINITY : part.shelfLimit + 1 - part.lot
  return {
    // What is not kept is ordered only once it is owed, so that nobody gets it at once.
    ...{ ...curve, short: curve.short.with(0, asked), mean: asked },
    least: yearly >= leastYearly ? 1 : 0,
    most: Math.max(0, Math.floor(room / curve.step)),
    cost: curve.step,
  }
}

/** One piece is kept of what is expected to be asked for once a year: nobody wants to wait for that again. */
const leastYearly = 1

function settle(draft: Curve, kept: (KeptPart & ShortageCurve) | undefined, entry: number): PlannedLevel {
  const { part, mean, perBucket, overProtection } = draft
  const floor = entry * (kept?.step ?? 1)
  const orderUpTo = floor === 0 ? 0 : floor + part.lot - 1
  const asked = kept?.mean ?? 0
  return {
    partId: part.partId,
    demandClass: classifyDemand(shapeOfDemand([...part.series].filter(demand => demand !== unknown))),
    meanPerBucket: mean,
    deviationPerBucket: Math.sqrt(mean * perBucket.ratio),
    reorderPoint: Math.max(0, floor - 1),
    orderUpTo,
    expectedFillRate: asked <= 0 ? 1 : Math.max(0, 1 - (kept?.short[entry] ?? 0) / asked),
    cycleService: cycleServiceOf(overProtection, orderUpTo),
  }
}

/** The probability that no more is asked for over lead time and review than there is. */
function cycleServiceOf({ mean, ratio }: SpreadDemand, stock: number): number {
  if (mean <= 0) return 1
  const demand =
    mean > mostCounted ? gammaDemand(mean, mean * ratio) : negativeBinomialDemand(mean, mean * ratio)
  return demand.cumulative(stock)
}

const mostCounted = 250
