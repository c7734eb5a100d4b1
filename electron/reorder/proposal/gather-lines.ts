import { Big } from 'big.js'
import type { InsteadOfBuying } from '../../../shared-schemas/proposal.ts'
import type { OrderProblem, SupplierTerms, WantedLine } from '../building/order-problem.ts'
import type { StockPlan } from '../plan-stock.ts'
import type { NamedPlan } from './plan-wanted.ts'
import { type DemandAhead, extraWorthOf, worthOf } from './spread-worth.ts'

/** A part that is to be ordered: so many pieces, what is used instead already taken off. */
export interface WantedPart extends NamedPlan {
  readonly pieces: number
  readonly instead: readonly InsteadOfBuying[]
}

export interface OfferOnRecord {
  readonly supplier: string
  readonly supplierCode: string | null
  readonly price: string
  readonly fromQuantity: number
  readonly pack: number
  readonly minimum: number
}

export interface SupplierOnRecord extends SupplierTerms {
  readonly name: string
  readonly currency: string
}

export interface BuildingFacts {
  readonly suppliers: readonly SupplierOnRecord[]
  /** By part, in the order of the quantities from which they hold. */
  readonly offers: ReadonlyMap<number, readonly OfferOnRecord[]>
  /** By part, the supplier that the shop wants it from. */
  readonly preferred: ReadonlyMap<number, string>
  readonly budget: string | null
  readonly aheadOf: (plan: StockPlan) => DemandAhead
  readonly yearlyOf: (plan: StockPlan) => number
  readonly holdingRate: number
}

/**
 * The order problems, one for each currency, since prices in two currencies have no order: a part goes to the currency of
 * most suppliers if it is offered in it, else to the next. The budget is in the currency of most suppliers.
 */
export function gatherLines(
  wanted: readonly WantedPart[],
  facts: BuildingFacts,
): readonly (OrderProblem & { readonly currency: string })[] {
  const currencies = rankCurrencies(facts.suppliers)
  const placed = Map.groupBy(wanted, part => currencyOf(part, facts, currencies))
  return currencies.flatMap((currency, place) => {
    const parts = placed.get(currency) ?? []
    const suppliers = facts.suppliers.filter(supplier => supplier.currency === currency)
    const budget = place === 0 ? facts.budget : null
    const lines = parts.map(part => asLine(part, { ...facts, suppliers, budget }))
    return parts.length === 0 ? [] : [{ currency, suppliers, lines, budget }]
  })
}

function rankCurrencies(suppliers: readonly SupplierOnRecord[]): string[] {
  const groups = Map.groupBy(suppliers, ({ currency }) => currency)
  // Without any supplier the lines are still told: nobody offers them.
  if (groups.size === 0) return ['']
  return [...groups]
    .sort(([one, ofOne], [other, ofOther]) => ofOther.length - ofOne.length || one.localeCompare(other))
    .map(([currency]) => currency)
}

/** Without an offer it stands with the usual currency, where it is told that nobody offers it. */
function currencyOf(
  { partId }: WantedPart,
  { suppliers, offers }: BuildingFacts,
  currencies: readonly string[],
): string | undefined {
  const offered = new Set(offers.get(partId)?.map(({ supplier }) => supplier))
  const usable = currencies.find(currency =>
    suppliers.some(supplier => supplier.currency === currency && offered.has(supplier.supplier)),
  )
  return usable ?? currencies[0]
}

function asLine(part: WantedPart, facts: BuildingFacts): WantedLine {
  const { partId, partNumber, pieces } = part
  const available = part.position.position
  const offers = usableOffers(part, facts)
  const price = offers[0]?.price ?? '0'
  const yearly = facts.yearlyOf(part)
  const room = (part.shelfLimit ?? Number.POSITIVE_INFINITY) - Math.max(0, available)
  const most = Math.max(pieces, Math.min(room, pieces + Math.ceil(yearly * mostYearsAhead)))
  const bySupplier = Map.groupBy(offers, ({ supplier }) => supplier)
  const worth = worthOf(facts.aheadOf(part), { available, pieces, price })
  return {
    ...{ lineId: partNumber, need: pieces, most },
    worth: facts.budget === null ? addToAll(worth, facts.suppliers) : worth,
    extraWorth: extraWorthOf({
      price,
      yearly,
      before: Math.max(0, available) + pieces,
      holdingRate: facts.holdingRate,
    }),
    offers: [...bySupplier].map(([supplier, rows]) => ({
      offerId: String(partId),
      supplier,
      rows: rows.map(({ fromQuantity, price, pack, minimum }) => ({
        from: fromQuantity,
        price,
        pack,
        minimum,
      })),
    })),
  }
}

/** Beyond the level, at most two months more are taken for a lower price or to fill up an order, if the shelf holds them. */
const mostYearsAhead = 2 / 12

/** The preferred supplier's where it offers the part, else everybody's of this currency. */
function usableOffers(
  { partId }: WantedPart,
  { suppliers, offers, preferred }: BuildingFacts,
): OfferOnRecord[] {
  const names = new Set(suppliers.map(({ supplier }) => supplier))
  const usable = (offers.get(partId) ?? []).filter(({ supplier }) => names.has(supplier))
  const wanted = usable.filter(({ supplier }) => supplier === preferred.get(partId))
  return wanted.length > 0 ? wanted : usable
}

/**
 * Without a budget nothing is left out for the sake of carriage or a dearer supplier: the levels count on it. So a line may
 * cost as much beyond its lowest price as all carriages and minimum orders together.
 */
function addToAll(worth: string, suppliers: readonly SupplierOnRecord[]): string {
  const amounts = suppliers.flatMap(({ carriage, minimumOrder }) => [carriage ?? '0', minimumOrder ?? '0'])
  return amounts.reduce((sum, amount) => sum.plus(amount), new Big(worth)).toFixed()
}
