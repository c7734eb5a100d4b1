import type { CheckedOrder, OrderLine } from '../../../shared-schemas/order-check.ts'
import type { Proposal, ProposedOrder } from '../../../shared-schemas/proposal.ts'
import { listSuppliers } from '../../catalogue/supplier-queries.ts'
import type { ReadableDatabase } from '../../database/handles.ts'
import { buildOrders } from '../building/build-orders.ts'
import { openExactSolver } from '../building/solve-exactly.ts'
import { daysPer } from '../demand/time-buckets.ts'
import { readReorderSettings } from '../plan-queries.ts'
import {
  addPieces,
  type PlanAsked,
  type PlanningShop,
  planStock,
  type ShopPlan,
  type StockPlan,
} from '../plan-stock.ts'
import { coverFromStock, type WantingPart } from './cover-from-stock.ts'
import { describeNotBuilt, describeOrder } from './describe-lines.ts'
import { type BuildingFacts, gatherLines } from './gather-lines.ts'
import { planMoves } from './plan-moves.ts'
import { decideWanting, type NamedPlan, spareOf, takeOffCovered } from './plan-wanted.ts'
import {
  listSpareInVans,
  readBuildingSettings,
  readInterchangeable,
  readNames,
  readOffersOfParts,
  readPreferredSuppliers,
} from './proposal-queries.ts'
import type { DemandAhead } from './spread-worth.ts'

/** What other capabilities know that a proposal is made from. */
export interface ProposalNeeds extends PlanningShop {
  readonly checkOrder: (order: {
    readonly lines: readonly OrderLine[]
    readonly supplier: string
  }) => CheckedOrder
  /** Pieces of each part on order sheets that are drafted or checked, and not sent yet. */
  readonly readOnSheets: () => ReadonlyMap<number, number>
}

/** This week's proposal, and the plan that it was made from. Nothing is written. */
export async function makeProposal(
  needs: ProposalNeeds,
  asked: PlanAsked,
): Promise<{ readonly proposal: Proposal; readonly plan: ShopPlan }> {
  const { database } = needs
  const solve = await openExactSolver()
  const onSheets = needs.readOnSheets()
  const plan = planWithSheets(needs, asked, onSheets)
  const plans = nameOwn(database, plan)
  const wanting = decideWanting(plans, onSheets)
  const { wanted, leftOut } = takeOffCovered(wanting.parts, coverWith(database, plans, wanting.parts))
  const facts = {
    ...gatherFacts(database, plan, wanting.parts),
    ...{ onSheets, wanted: new Map(wanted.map(part => [part.partNumber, part])) },
  }
  const built = gatherLines(wanted, facts).map(problem => ({
    currency: problem.currency,
    ...buildOrders(problem, solve),
  }))
  const proposal: Proposal = {
    ...{ asOf: plan.asOf, bucket: plan.bucket, targetFillRate: plan.targetFillRate },
    ...{ expectedFillRate: plan.expectedFillRate, reviewDays: plan.reviewDays },
    orders: built
      .flatMap(({ orders }) => orders)
      .map(order => checkEveryLine(needs, describeOrder(order, facts))),
    moves: planMoves(
      plans.filter(({ position }) => position.vanSpare > 0),
      listSpareInVans(database),
    ),
    leftOut: [
      ...built.flatMap(order => order.leftOut.map(line => describeNotBuilt(line, facts))),
      ...leftOut,
      ...wanting.leftOut,
    ],
    proofs: built
      .filter(({ orders }) => orders.length > 0)
      .map(({ currency, proof }) => ({ currency, ...proof })),
    parts: plans.length,
    enough: plans.length - wanting.parts.length,
  }
  return { proposal, plan }
}

/** What is on sheets that are not sent yet counts as coming: the same pieces are not proposed again meanwhile. */
function planWithSheets(
  needs: ProposalNeeds,
  asked: PlanAsked,
  onSheets: ReadonlyMap<number, number>,
): ShopPlan {
  const readOnOrder = () => addPieces(needs.readOnOrder(), onSheets)
  return planStock({ ...needs, readOnOrder }, asked)
}

/** The parts that count under their own number: what there is of an old one counts for the new. */
function nameOwn(database: ReadableDatabase, { plans }: ShopPlan): NamedPlan[] {
  const names = readNames(database)
  return plans.flatMap(plan => {
    const name = names.get(plan.partId)
    return name === undefined || plan.countsFor !== plan.partId ? [] : [{ ...plan, ...name }]
  })
}

function coverWith(
  database: ReadableDatabase,
  plans: readonly NamedPlan[],
  wanting: readonly (NamedPlan & WantingPart)[],
) {
  const interchangeable = readInterchangeable(
    database,
    wanting.map(({ partId }) => partId),
  )
  const spare = new Map(plans.map(plan => [plan.partId, spareOf(plan)]))
  const { usesPatternStock } = readBuildingSettings(database)
  return coverFromStock(wanting.map(asCoverable), { interchangeable, spare, usesPatternStock })
}

/** What is owed was promised by its number, to a job or by a van's list: only what is for the shelf may be another part. */
function asCoverable({ partId, kind, pieces, position }: NamedPlan & WantingPart): WantingPart {
  return { partId, kind, pieces: Math.max(0, pieces - Math.max(0, -position.position)) }
}

function gatherFacts(
  database: ReadableDatabase,
  { bucket, reviewDays }: ShopPlan,
  wanting: readonly StockPlan[],
): BuildingFacts {
  const days = daysPer(bucket)
  return {
    suppliers: listSuppliers(database),
    offers: readOffersOfParts(
      database,
      wanting.map(({ partId }) => partId),
    ),
    preferred: readPreferredSuppliers(database),
    budget: readBuildingSettings(database).budget,
    holdingRate: readReorderSettings(database).holdingRate,
    yearlyOf: ({ level }) => (level.meanPerBucket * 365.2425) / days,
    aheadOf: plan => demandAhead(plan, reviewDays, days),
  }
}

/** Over the lead time and the review: the variance of the demand, and of a lead time that varies. */
function demandAhead({ level, leadTime }: StockPlan, reviewDays: number, bucketDays: number): DemandAhead {
  const buckets = (leadTime.days + reviewDays) / bucketDays
  const byLeadTime = (level.meanPerBucket * leadTime.deviation) / bucketDays
  return {
    mean: level.meanPerBucket * buckets,
    deviation: Math.sqrt(buckets * level.deviationPerBucket ** 2 + byLeadTime ** 2),
  }
}

/** The order check on every line, as it is run on the order sheet again. */
function checkEveryLine({ checkOrder }: ProposalNeeds, order: ProposedOrder): ProposedOrder {
  const { lines } = checkOrder({
    supplier: order.supplier,
    lines: order.lines.map(({ partNumber, quantity }, at) => ({ line: at + 1, partNumber, quantity })),
  })
  return { ...order, lines: order.lines.map((line, at) => ({ ...line, flags: lines[at]?.flags ?? [] })) }
}
