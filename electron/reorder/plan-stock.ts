import type { Bucket, PartLife, ValueClass } from '../../shared-schemas/stock-levels.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { listLocations } from '../stock-ledger/location-queries.ts'
import { listOnHand } from '../stock-ledger/on-hand-queries.ts'
import { followSuccessors } from './demand/carry-over.ts'
import { readSuccessors } from './demand/demand-queries.ts'
import { type Series, unknown } from './demand/gather-series.ts'
import { lifeOfPart } from './demand/life-of-part.ts'
import { rankByValue } from './demand/rank-by-value.ts'
import { readDemand } from './demand/read-demand.ts'
import { daysPer } from './demand/time-buckets.ts'
import { chooseLot } from './levels/choose-lot.ts'
import { estimateLeadTime, type LeadTime } from './levels/lead-time.ts'
import { lotsToOrder } from './levels/order-quantity.ts'
import { noLevel, type PlannedLevel, planLevels } from './levels/plan-levels.ts'
import {
  listParts,
  listVanLevels,
  type PlanningOffer,
  readPlanningOffers,
  readReorderSettings,
  readReservedByPart,
} from './plan-queries.ts'
import { noPosition, type PartPosition, reckonPositions } from './reckon-positions.ts'

/** What planning is handed in: the shop's file, and what other capabilities know. */
export interface PlanningShop {
  readonly database: ReadableDatabase
  readonly now: () => Date
  /** Pieces of each part that suppliers still owe. */
  readonly readOnOrder: () => ReadonlyMap<number, number>
  /** Pieces of each part that are promised besides: open jobs wait for them, or a van's list names their family. */
  readonly readAwaited: () => ReadonlyMap<number, number>
  /** Days that the deliveries of each supplier took, of those that came up to the end of a day. */
  readonly readLeadTimes: (asOf: string) => ReadonlyMap<number, readonly number[]>
}

/** What may be said in place of the shop's settings. */
export interface PlanAsked {
  readonly asOf?: string | undefined
  readonly fillRate?: number | undefined
  readonly bucket?: Bucket | undefined
  readonly leadDays?: number | undefined
  readonly reviewDays?: number | undefined
}

/** One part of the catalogue: what it is expected to sell, what should be there, and what there is. */
export interface StockPlan {
  readonly partId: number
  readonly partNumber: string
  readonly familyId: number
  readonly family: string
  /** The part that its history and its stock count for today: mostly itself. */
  readonly countsFor: number
  readonly life: PartLife
  readonly valueClass: ValueClass | null
  readonly level: PlannedLevel
  readonly leadTime: LeadTime
  readonly lot: number
  readonly shelfLimit: number | null
  /** Pieces asked for by bucket, the latest last; null is out of stock, and not known. Empty where nothing ever was. */
  readonly history: readonly (number | null)[]
  readonly position: PartPosition
  /** Pieces that a review orders now, in lots: from the reorder point or below it up to the level. */
  readonly needed: number
}

export interface ShopPlan {
  readonly asOf: string
  readonly bucket: Bucket
  readonly targetFillRate: number
  readonly expectedFillRate: number
  readonly reviewDays: number
  readonly plans: readonly StockPlan[]
}

/**
 * Plans every part of the catalogue from what was used up to the end of a day. Stock and what is on order are those of
 * now: nobody orders into the past.
 */
export function planStock(shop: PlanningShop, asked: PlanAsked): ShopPlan {
  const facts = readPlanFacts(shop, asked)
  const { aim, parts, demand, positions, countsFor } = facts
  const planned = planLevels(
    parts.flatMap(part => (part.series === undefined ? [] : [asPlanned(part, part.series)])),
    aim,
  )
  const levels = new Map(planned.levels.map(level => [level.partId, level]))
  const classes = rankByValue(
    parts.flatMap(({ partId, offer, yearly }) =>
      offer === undefined ? [] : [{ partId, pieces: yearly, price: offer.price }],
    ),
  )
  const plans = parts.map((part): StockPlan => {
    const { partId, series, leadTime, lot, partNumber, familyId, family, shelfLimit } = part
    const level = levels.get(partId) ?? noLevel(partId)
    const position = positions.get(partId) ?? noPosition
    const isOwn = countsFor(partId) === partId
    return {
      ...{ partId, partNumber, familyId, family, leadTime, lot, shelfLimit, level, position },
      countsFor: countsFor(partId),
      life: isOwn ? lifeOfPart(series ?? noSeries, aim.daysPerBucket) : 'replaced',
      valueClass: classes.get(partId) ?? null,
      history: Array.from(series ?? noSeries, pieces => (pieces === unknown ? null : pieces)),
      needed: neededOf(level, position.position, lot),
    }
  })
  return {
    asOf: facts.asOf,
    bucket: demand.buckets.bucket,
    targetFillRate: aim.fillRate,
    expectedFillRate: planned.expectedFillRate,
    reviewDays: aim.reviewDays,
    plans,
  }
}

const noSeries: Series = new Int32Array(0)

/** What planning starts from: every part with its history, its offer and its position. */
export function readPlanFacts(shop: PlanningShop, asked: PlanAsked) {
  const { database } = shop
  const settings = readReorderSettings(database)
  const asOf = asked.asOf ?? localDay(shop.now())
  const countsFor = followSuccessors(readSuccessors(database))
  const demand = readDemand(database, { asOf, bucket: asked.bucket, countsFor })
  const daysPerBucket = daysPer(demand.buckets.bucket)
  const aim = {
    fillRate: asked.fillRate ?? settings.fillRate,
    reviewDays: asked.reviewDays ?? settings.reviewDays,
    daysPerBucket,
  }
  const listed = listParts(database)
  const familyOf = new Map(listed.map(({ partId, familyId }) => [partId as number, familyId]))
  const offers = readPlanningOffers(database)
  const delivered = shop.readLeadTimes(asOf)
  const costs = {
    perLine: settings.lineCost === null ? null : Number(settings.lineCost),
    holdingRate: settings.holdingRate,
  }
  const parts = listed.map(part => {
    const offer = offers.get(part.partId)
    const series = demand.series.get(part.partId)
    const yearly = series === undefined ? 0 : usedInYear(series, daysPerBucket)
    return {
      ...part,
      ...{ offer, series, yearly },
      leadTime: leadTimeOf(offer, { given: asked.leadDays, assumed: settings.leadDays, delivered }),
      lot: offer === undefined ? 1 : chooseLot(offer, costs, yearly),
    }
  })
  const positions = reckonPositions({
    stock: listOnHand(database, { locationId: null, partId: null, before: null }),
    locations: listLocations(database),
    vanLevels: listVanLevels(database),
    familyOf: partId => familyOf.get(partId),
    reserved: addPieces(readReservedByPart(database), shop.readAwaited()),
    onOrder: shop.readOnOrder(),
    countsFor,
  })
  return { asOf, aim, parts, demand, positions, countsFor }
}

/** Pieces by part, of both together. */
export function addPieces(
  some: ReadonlyMap<number, number>,
  more: ReadonlyMap<number, number>,
): ReadonlyMap<number, number> {
  const sum = new Map(some)
  for (const [partId, pieces] of more) sum.set(partId, (sum.get(partId) ?? 0) + pieces)
  return sum
}

export type PlanFacts = ReturnType<typeof readPlanFacts>
type PartFacts = PlanFacts['parts'][number]

export function asPlanned({ partId, leadTime, lot, shelfLimit }: PartFacts, series: Series) {
  return { partId, series, lot, shelfLimit, leadDays: leadTime.days, leadDaysDeviation: leadTime.deviation }
}

function leadTimeOf(
  offer: PlanningOffer | undefined,
  known: {
    readonly given: number | undefined
    readonly assumed: number
    readonly delivered: ReadonlyMap<number, readonly number[]>
  },
): LeadTime {
  return estimateLeadTime({
    given: known.given,
    assumed: known.assumed,
    stated: offer?.leadDays ?? null,
    delivered: offer === undefined ? [] : (known.delivered.get(offer.supplierId) ?? []),
  })
}

/** Pieces asked for in the last year of a series. */
function usedInYear(series: Series, daysPerBucket: number): number {
  const from = Math.max(0, series.length - Math.round(365 / daysPerBucket))
  return series.subarray(from).reduce((sum, pieces) => sum + Math.max(0, pieces), 0)
}

/** What is not kept is ordered only when it is owed. */
function neededOf({ reorderPoint, orderUpTo }: PlannedLevel, position: number, lot: number): number {
  return lotsToOrder(position, { reorderPoint: orderUpTo === 0 ? -1 : reorderPoint, lot })
}

/** The day here, as ISO 8601. */
function localDay(now: Date): string {
  const two = (figure: number) => String(figure).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
