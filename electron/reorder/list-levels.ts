import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { FamilyLevel, StockLevel } from '../../shared-schemas/stock-levels.ts'
import { daysPer } from './demand/time-buckets.ts'
import { planFamily } from './levels/plan-family.ts'
import { type PlanningShop, planStock, type ShopPlan, type StockPlan } from './plan-stock.ts'

/** The levels of every part, in the order of their numbers, and of every family that sold anything. */
export function listLevels(
  shop: PlanningShop,
  asked: CheckedInput<'reorder.list-levels'>,
): Output<'reorder.list-levels'> {
  const plan = planStock(shop, asked)
  const numbers = new Map(plan.plans.map(({ partId, partNumber }) => [partId, partNumber]))
  const { asOf, bucket, targetFillRate, expectedFillRate, reviewDays, plans } = plan
  return {
    ...{ asOf, bucket, targetFillRate, expectedFillRate: rounded(expectedFillRate), reviewDays },
    rows: plans.map(part => asRow(part, plan, numbers)),
    families: listFamilies(plan),
  }
}

function asRow(
  { partId, partNumber, family, countsFor, life, valueClass, level, leadTime, lot }: StockPlan,
  { targetFillRate }: ShopPlan,
  numbers: ReadonlyMap<number, string>,
): StockLevel {
  return {
    ...{ partNumber, family, life, valueClass, lot, targetFillRate },
    demandClass: level.demandClass,
    replacedBy: countsFor === partId ? null : (numbers.get(countsFor) ?? null),
    meanPerBucket: rounded(level.meanPerBucket),
    deviationPerBucket: rounded(level.deviationPerBucket),
    reorderPoint: level.reorderPoint,
    orderUpTo: level.orderUpTo,
    expectedFillRate: rounded(level.expectedFillRate),
    cycleService: rounded(level.cycleService),
    leadDays: rounded(leadTime.days),
    leadDaysDeviation: rounded(leadTime.deviation),
    leadTimeFrom: leadTime.from,
  }
}

function listFamilies({ plans, bucket, targetFillRate, reviewDays }: ShopPlan): FamilyLevel[] {
  const sold = plans.filter(({ history }) => history.length > 0)
  return [...Map.groupBy(sold, ({ family }) => family)].map(([family, parts]) => {
    const longest = Math.max(...parts.map(({ leadTime }) => leadTime.days))
    const plan = planFamily(
      parts.map(({ history, level }) => ({ history, ...level })),
      {
        fillRate: targetFillRate,
        leadTime: longest / daysPer(bucket),
        review: reviewDays / daysPer(bucket),
      },
    )
    return { family, parts: parts.length, ...plan, meanPerBucket: rounded(plan.meanPerBucket) }
  })
}

/** More places would say nothing. */
function rounded(figure: number): number {
  return Math.round(figure * 10_000) / 10_000
}
