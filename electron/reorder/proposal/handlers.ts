import { findPartByNumber, listNearestPartNumbers } from '../../catalogue/part-queries.ts'
import { supplierNamed } from '../../catalogue/supplier-queries.ts'
import { type DatabaseHandle, inTransaction, type ReadableDatabase } from '../../database/handles.ts'
import type { HandlersOf } from '../../requests/handlers.ts'
import { Refusal } from '../../requests/refusal.ts'
import type { PlanAsked, ShopPlan } from '../plan-stock.ts'
import { makeProposal, type ProposalNeeds } from './make-proposal.ts'
import { labelHistory, projectStock } from './project-stock.ts'
import {
  readBuildingSettings,
  readOffersOfParts,
  replaceBuildingSettings,
  replacePreferredSupplier,
} from './proposal-queries.ts'
import { weighLines } from './weigh-lines.ts'

export interface ProposalShop extends ProposalNeeds {
  readonly database: DatabaseHandle
}

export function proposalHandlers(shop: ProposalShop): HandlersOf<'proposal'> {
  const { database } = shop
  /** The plan of the last proposal, so that what was proposed is explained by what it was made from. */
  let last: { readonly asked: string; readonly plan: ShopPlan } | undefined
  const propose = async ({ asOf, fillRate }: PlanAsked) => {
    const { proposal, plan } = await makeProposal(shop, { asOf, fillRate })
    last = { asked: `${asOf} ${fillRate}`, plan }
    return proposal
  }
  return {
    'proposal.make-proposal': propose,
    'proposal.explain-part': async ({ part, quantity, asOf, fillRate }) => {
      const { partId, partNumber } = partNumbered(database, part)
      const planned = () => last?.plan.plans.find(candidate => candidate.partId === partId)
      if (last?.asked !== `${asOf} ${fillRate}` || planned() === undefined) await propose({ asOf, fillRate })
      const [plan, found] = [last?.plan, planned()]
      if (plan === undefined || found === undefined)
        throw new Error(`a plan has every part of the catalogue, but not ${partNumber}`)
      const { meanPerBucket, reorderPoint, orderUpTo } = found.level
      return {
        ...{ partNumber, bucket: plan.bucket, meanPerBucket, reorderPoint, orderUpTo },
        history: labelHistory(found, plan),
        projected: projectStock(found, plan, quantity),
      }
    },
    'proposal.weigh-order': ({ supplier: typed, lines }) => {
      const terms = supplierNamed(database, typed)
      const { supplier } = terms
      const parts = lines.map(({ part, quantity }) => ({ ...partNumbered(database, part), quantity }))
      const offers = readOffersOfParts(
        database,
        parts.map(({ partId }) => partId),
      )
      const weighed = weighLines(
        parts.map(({ partId, partNumber, quantity }) => ({
          ...{ partNumber, quantity },
          offers: (offers.get(partId) ?? []).filter(offer => offer.supplier === supplier),
        })),
        terms,
      )
      const checked = shop.checkOrder({
        supplier,
        lines: parts.map(({ partNumber, quantity }, at) => ({ line: at + 1, partNumber, quantity })),
      })
      return {
        ...weighed,
        stops: checked.stops,
        lines: weighed.lines.map((line, at) => ({ ...line, flags: checked.lines[at]?.flags ?? [] })),
      }
    },
    'proposal.read-settings': () => readBuildingSettings(database),
    'proposal.change-settings': change =>
      inTransaction(database, writable => {
        const before = readBuildingSettings(writable)
        const settings = {
          budget: change.budget === undefined ? before.budget : change.budget,
          usesPatternStock: change.usesPatternStock ?? before.usesPatternStock,
        }
        replaceBuildingSettings(writable, settings)
        return settings
      }),
    'proposal.prefer-supplier': ({ part, supplier: typed }) =>
      inTransaction(database, writable => {
        const { partId, partNumber } = partNumbered(writable, part)
        const supplier = typed === null ? null : supplierNamed(writable, typed).supplier
        replacePreferredSupplier(writable, partId, supplier)
        return { partNumber, supplier }
      }),
  }
}

function partNumbered(database: ReadableDatabase, typed: string) {
  const part = findPartByNumber(database, typed)
  if (part === undefined)
    throw new Refusal({
      code: 'part-not-found',
      typed,
      nearest: listNearestPartNumbers(database, typed),
    })
  return part
}
