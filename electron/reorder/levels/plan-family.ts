import { classifyDemand, type DemandClass, shapeOfDemand } from '../demand/classify-demand.ts'
import { shortageByStock } from './shortage-curve.ts'

/** A part of a family: what was asked for by bucket (null is not known), and what is expected. */
export interface FamilyPart {
  readonly history: readonly (number | null)[]
  readonly meanPerBucket: number
  readonly deviationPerBucket: number
}

export interface FamilyAim {
  readonly fillRate: number
  /** In buckets. */
  readonly leadTime: number
  readonly review: number
}

export interface FamilyPlan {
  readonly demandClass: DemandClass
  readonly meanPerBucket: number
  /** What would do if any of the parts could be given for any other. */
  readonly orderUpTo: number
}

/** Pools the demand of a family's parts, each of which is asked for independently of the others. */
export function planFamily(
  parts: readonly FamilyPart[],
  { fillRate, leadTime, review }: FamilyAim,
): FamilyPlan {
  const mean = sumOf(parts.map(({ meanPerBucket }) => meanPerBucket))
  const variance = sumOf(parts.map(({ deviationPerBucket }) => deviationPerBucket ** 2))
  const demandClass = classifyDemand(shapeOfDemand(poolHistories(parts)))
  if (mean <= 0) return { demandClass, meanPerBucket: 0, orderUpTo: 0 }
  const over = (buckets: number) => ({ mean: mean * buckets, ratio: Math.max(1.05, variance / mean) })
  const { step, short } = shortageByStock(over(leadTime), over(leadTime + review))
  const enough = short.findIndex(pieces => pieces <= (1 - fillRate) * mean * review)
  return { demandClass, meanPerBucket: mean, orderUpTo: (enough === -1 ? short.length - 1 : enough) * step }
}

/** By bucket, what is known of any of the parts; a bucket in which nothing is known of any is left out. */
function poolHistories(parts: readonly FamilyPart[]): number[] {
  const length = Math.max(0, ...parts.map(({ history }) => history.length))
  return Array.from({ length }, (_, at) => parts.flatMap(({ history }) => history[at] ?? [])).flatMap(
    known => (known.length === 0 ? [] : [sumOf(known)]),
  )
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0)
}
