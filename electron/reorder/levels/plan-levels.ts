import { classifyDemand, type DemandClass, shapeOfDemand } from '../demand/classify-demand.ts'
import { type Series, unknown } from '../demand/gather-series.ts'
import { lifeOfPart } from '../demand/life-of-part.ts'
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

export interface ReviewRhythm {
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
}

/** Of a part that nobody ever asked for; what nobody has asked for in two years is planned alike. */
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

/** The levels of all parts at the end of their series, for one aim. */
export function planLevels(
  parts: readonly PlannedPart[],
  rhythm: ReviewRhythm & { readonly fillRate: number },
): PlannedLevels {
  return shareOutLevels(expectDemand(parts, rhythm), rhythm.fillRate)
}

/** A part with the demand that is expected of it, and what each stock would leave short. */
export interface ExpectedPart extends Draft, KeptPart, Pick<ShortageCurve, 'step'> {
  readonly perBucket: SpreadDemand
  readonly overProtection: SpreadDemand
}

/** What is expected of each part at the end of its series, which are of one length. Nothing but the series is learned from. */
export function expectDemand(parts: readonly PlannedPart[], rhythm: ReviewRhythm): readonly ExpectedPart[] {
  const terms = parts.map(part => ({ part, ...protectionOf(part, rhythm) }))
  const series = parts.map(part => part.series)
  const blend = fitBlend(series, {
    daysPerBucket: rhythm.daysPerBucket,
    horizons: horizonsOf(terms),
  })
  const decays = decaysOf(rhythm.daysPerBucket)
  const drafts = terms.map((term): Draft => {
    const [history] = smoothHistory(term.part.series, decays, [term.part.series.length])
    const isDead = lifeOfPart(term.part.series, rhythm.daysPerBucket) === 'dead'
    const meanPerBucket = history === undefined || isDead ? 0 : blendMean(blend, history)
    return { ...term, history, meanPerBucket }
  })
  const scale = scaleOfSizes(drafts, blend)
  return drafts.map(draft => expectShortage(draft, { blend, scale }, rhythm))
}

/** Levels with which all parts together give this share of what is asked for, with the fewest pieces. */
export function shareOutLevels(parts: readonly ExpectedPart[], fillRate: number): PlannedLevels {
  const entries = shareOutStock(parts, fillRate)
  const asked = parts.reduce((sum, { mean }) => sum + mean, 0)
  const short = parts.reduce((sum, part, at) => sum + (part.short[entries[at] ?? 0] ?? 0), 0)
  return {
    levels: parts.map((part, at) => settleLevel(part, entries[at] ?? 0)),
    expectedFillRate: asked <= 0 ? 1 : 1 - short / asked,
  }
}

interface Term {
  readonly part: PlannedPart
  /** In buckets. */
  readonly leadTime: number
  readonly leadTimeDeviation: number
  readonly protection: number
}

interface Draft extends Term {
  readonly history: SmoothedHistory | undefined
  readonly meanPerBucket: number
}

function protectionOf(part: PlannedPart, { daysPerBucket, reviewDays }: ReviewRhythm): Omit<Term, 'part'> {
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

/** What a part's size spread is divided by, so that the spread of all demand together stays what was seen. */
function scaleOfSizes(drafts: readonly Draft[], { pool }: Blend): number {
  let [weighted, means] = [0, 0]
  for (const { history, meanPerBucket } of drafts) {
    if (history === undefined) continue
    weighted += meanPerBucket * sizeSpreadOf(history, pool)
    means += meanPerBucket
  }
  return means > 0 ? weighted / means : 1
}

/** Demand over lead time, and over lead time and review; a lead time that varies adds to the variance of both. */
function expectShortage(
  draft: Draft,
  { blend, scale }: { readonly blend: Blend; readonly scale: number },
  { daysPerBucket }: ReviewRhythm,
): ExpectedPart {
  const { part, history, meanPerBucket, leadTime, leadTimeDeviation, protection } = draft
  const size = history === undefined ? 1 : sizeSpreadOf(history, blend.pool) / scale
  const over = (buckets: number): SpreadDemand => {
    const ofLeadTime = buckets > 0 ? (meanPerBucket * leadTimeDeviation ** 2) / buckets : 0
    const ratio = size * blend.spreadOver(wholeHorizon(buckets)) + ofLeadTime
    return { mean: meanPerBucket * buckets, ratio: Math.max(leastRatio, ratio) }
  }
  const overProtection = over(protection)
  const asked = meanPerBucket * (protection - leadTime)
  const { step, short } = averageOverLot(shortageByStock(over(leadTime), overProtection), part.lot)
  const room = part.shelfLimit === null ? Number.POSITIVE_INFINITY : part.shelfLimit + 1 - part.lot
  return {
    ...draft,
    ...{ step, overProtection, perBucket: over(1), mean: asked, cost: step },
    // What is not kept is ordered only once it is owed, so that nobody gets it at once.
    short: short.with(0, asked),
    least: (meanPerBucket * 365.2425) / daysPerBucket >= leastYearly ? 1 : 0,
    most: Math.max(0, Math.floor(room / step)),
  }
}

/** Parts that break do not break more evenly than by chance, which is Poisson demand. */
const leastRatio = 1.05
/** One piece is kept of what is expected to be asked for once a year. */
const leastYearly = 1

function settleLevel(part: ExpectedPart, entry: number): PlannedLevel {
  const { lot, partId, series } = part.part
  const floor = entry * part.step
  const orderUpTo = floor === 0 ? 0 : floor + lot - 1
  return {
    partId,
    demandClass: classifyDemand(shapeOfDemand([...series].filter(demand => demand !== unknown))),
    meanPerBucket: part.meanPerBucket,
    deviationPerBucket: Math.sqrt(part.meanPerBucket * part.perBucket.ratio),
    reorderPoint: Math.max(0, floor - 1),
    orderUpTo,
    expectedFillRate: part.mean <= 0 ? 1 : Math.max(0, 1 - (part.short[entry] ?? 0) / part.mean),
    cycleService: cycleServiceOf(part.overProtection, orderUpTo),
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
