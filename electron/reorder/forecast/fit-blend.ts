import { type Series, unknown } from '../demand/gather-series.ts'
import { decaysOf, type SmoothedHistory, smoothHistory } from './smooth-history.ts'
import { solveNonnegative } from './solve-nonnegative.ts'

/** How the next demand follows from a part's history, as the whole shop's history shows it. */
export interface Blend {
  /** Of each smoothed mean of the part, and last of the mean of all parts. */
  readonly weights: readonly number[]
  /** Variance over mean of the demand in so many buckets, for a part whose sizes vary as usual. */
  readonly spreadOver: (buckets: number) => number
  readonly pool: Pool
}

/** What all parts that were ever asked for have in common. */
export interface Pool {
  /** Pieces per bucket of a part. */
  readonly mean: number
  /** Mean squared over mean size of a bucket's demand. */
  readonly sizeSpread: number
}

export interface BlendAsked {
  readonly daysPerBucket: number
  /** Whole numbers of buckets over which the spread is needed, the most frequent first. */
  readonly horizons: readonly number[]
}

/**
 * Learns from the shop's own past how much each smoothed mean tells of the demand that followed, and how far off that was:
 * the parts are put together at many days of the last two years, each with what was known then and what came after. Where
 * there is little to learn from, usual weights count.
 */
export function fitBlend(all: readonly Series[], { daysPerBucket, horizons }: BlendAsked): Blend {
  const sample = takeSample(all)
  const decays = decaysOf(daysPerBucket)
  const length = all[0]?.length ?? 0
  const spreads = new Map<number, number>()
  let weights: readonly number[] = usualWeights
  for (const [at, horizon] of horizons.entries()) {
    const seen = lookBack(sample, decays, originsOf(length, horizon, daysPerBucket), horizon)
    if (at === 0) weights = fitWeights(seen)
    spreads.set(horizon, fitSpread(seen, weights, horizon))
  }
  const now = sample.flatMap(series =>
    smoothHistory(series, decays, [length]).filter(history => history !== undefined),
  )
  return {
    weights,
    pool: poolOf(now),
    spreadOver: buckets => spreads.get(buckets) ?? usualSpread,
  }
}

/** Pieces that are expected per bucket, after such a history. */
export function blendMean(
  { weights, pool }: Pick<Blend, 'weights' | 'pool'>,
  history: SmoothedHistory,
): number {
  return [...history.means, pool.mean].reduce((sum, mean, at) => sum + mean * (weights[at] ?? 0), 0)
}

/** How a part's sizes vary, its own history and a few pieces' worth of what is usual taken together. */
export function sizeSpreadOf({ pieces, squares }: SmoothedHistory, pool: Pool): number {
  return (squares + usualPieces * pool.sizeSpread) / (pieces + usualPieces)
}

/** Of 0.3, 1, 3, 6 and 12, the one that did best on months 19 to 36 of the record named below. */
const usualPieces = 6

/** As they came out on the first three years of a public record of car parts by the month (Hyndman et al. 2008). */
const usualWeights: readonly number[] = [0, 0.1, 0.45, 0.15, 0.1, 0.2]
const usualSpread = 2
/** So many looks back count as much as what is usual. */
const usualLooks = 200

/** A large shop shows what it shows on a part of it; every so many parts, so that the same are taken every time. */
function takeSample(all: readonly Series[]): readonly Series[] {
  const step = Math.ceil(all.length / mostSampled)
  return step <= 1 ? all : all.filter((_, at) => at % step === 0)
}

const mostSampled = 4_000

/** Days to look back at: within two years, with a quarter of a year of history before, and the horizon after. */
function originsOf(length: number, horizon: number, daysPerBucket: number): number[] {
  const first = Math.max(Math.round(91 / daysPerBucket), length - horizon - Math.round(730 / daysPerBucket))
  const step = Math.max(1, Math.round(30 / daysPerBucket))
  const origins: number[] = []
  for (let origin = length - horizon; origin >= first && origin > 0; origin -= step) origins.unshift(origin)
  return origins
}

/** What was known of a part on a day, and the mean per bucket that came after. */
interface Look {
  readonly history: SmoothedHistory
  readonly pool: Pool
  readonly came: number
}

function lookBack(
  sample: readonly Series[],
  decays: readonly number[],
  origins: readonly number[],
  horizon: number,
): Look[] {
  const histories = sample.map(series => smoothHistory(series, decays, origins))
  return origins.flatMap((origin, at) => {
    const known = histories.flatMap(found => found[at] ?? [])
    const pool = poolOf(known)
    return sample.flatMap((series, part) => {
      const history = histories[part]?.[at]
      const came = meanOf(series, origin, horizon)
      return history === undefined || came === undefined ? [] : [{ history, pool, came }]
    })
  })
}

/** Pieces per bucket in what follows; undefined where some of it is unknown. */
function meanOf(series: Series, from: number, horizon: number): number | undefined {
  let sum = 0
  for (let at = from; at < from + horizon; at++) {
    const demand = series[at] ?? unknown
    if (demand === unknown) return undefined
    sum += demand
  }
  return sum / horizon
}

function poolOf(histories: readonly SmoothedHistory[]): Pool {
  let [sum, pieces, squares] = [0, 0, 0]
  for (const history of histories) {
    sum += history.means[poolMemory] ?? 0
    pieces += history.pieces
    squares += history.squares
  }
  return { mean: sum / Math.max(1, histories.length), sizeSpread: pieces === 0 ? 1 : squares / pieces }
}

/** The pool's mean is that of about a year. */
const poolMemory = 3

function fitWeights(seen: readonly Look[]): readonly number[] {
  const columns = usualWeights.length
  const products = usualWeights.map(() => usualWeights.map(() => 0))
  const sought = usualWeights.map(() => 0)
  for (const { history, pool, came } of seen) {
    const row = [...history.means, pool.mean]
    // What sells much varies much, so it is heard less; but not as much less as its variance is larger.
    const weight = 1 / Math.sqrt(0.1 * pool.mean + (row[2] ?? 0))
    for (let at = 0; at < columns; at++) {
      const [value, line] = [row[at] ?? 0, products[at] ?? []]
      for (let to = 0; to < columns; to++) line[to] = (line[to] ?? 0) + weight * value * (row[to] ?? 0)
      sought[at] = (sought[at] ?? 0) + weight * value * came
    }
  }
  return solveNonnegative(
    { products, sought },
    { usual: usualWeights, strength: usualLooks / (seen.length + 1) },
  )
}

/** Mean of the squared errors over what was expected, in sums over the horizon: the ratio of variance to mean. */
function fitSpread(seen: readonly Look[], weights: readonly number[], horizon: number): number {
  let sum = usualLooks * usualSpread
  for (const { history, pool, came } of seen) {
    const expected = Math.max(leastMean * pool.mean, blendMean({ weights, pool }, history))
    sum += (horizon * (came - expected) ** 2) / expected
  }
  return sum / (seen.length + usualLooks)
}

const leastMean = 0.01
