import { Big } from 'big.js'
import type { WeighedOrder } from '../../../shared-schemas/proposal.ts'
import { wordAmount } from './describe-lines.ts'
import type { OfferOnRecord, SupplierOnRecord } from './gather-lines.ts'

export interface WeighedPart {
  readonly partNumber: string
  readonly quantity: number
  /** What the supplier offers of it, in the order of the quantities from which the offers hold. */
  readonly offers: readonly OfferOnRecord[]
}

/** What an order comes to as its lines stand, what is missing to the supplier's thresholds, and what a pack more changes. */
export function weighLines(
  lines: readonly WeighedPart[],
  terms: SupplierOnRecord,
): Omit<WeighedOrder, 'stops' | 'lines'> & {
  readonly lines: readonly Omit<WeighedOrder['lines'][number], 'flags'>[]
} {
  const amounts = lines.map(({ offers, quantity }) => amountOf(offers, quantity))
  const goods = amounts.reduce((sum, amount) => sum.plus(amount), new Big(0))
  const carriage = carriageOn(goods, terms)
  const total = goods.plus(carriage)
  return {
    ...{ goods: wordAmount(goods), carriage: wordAmount(carriage), total: wordAmount(total) },
    toMinimum: missingTo(goods, terms.minimumOrder),
    toCarriagePaid: carriage.eq(0) ? null : missingTo(goods, terms.carriagePaidFrom),
    lines: lines.map(({ partNumber, quantity, offers }, at) => {
      const amount = amounts[at] ?? new Big(0)
      const row = rowFor(offers, quantity)
      const pack = row?.pack ?? 1
      const more = Math.floor(quantity / pack + 1) * pack
      const goodsThen = goods.minus(amount).plus(amountOf(offers, more))
      return {
        ...{ partNumber, quantity, pack, unitPrice: row?.price ?? '0', amount: wordAmount(amount) },
        oneMore: {
          quantity: more,
          change: wordAmount(goodsThen.plus(carriageOn(goodsThen, terms)).minus(total)),
        },
      }
    }),
  }
}

function amountOf(offers: readonly OfferOnRecord[], quantity: number): Big {
  return new Big(rowFor(offers, quantity)?.price ?? 0).times(quantity)
}

/** The offer that holds for so many pieces; below all of them the first. */
function rowFor(offers: readonly OfferOnRecord[], quantity: number): OfferOnRecord | undefined {
  return offers.findLast(({ fromQuantity }) => fromQuantity <= quantity) ?? offers[0]
}

function carriageOn(goods: Big, { carriage, carriagePaidFrom }: SupplierOnRecord): Big {
  const isFree = goods.eq(0) || (carriagePaidFrom !== null && goods.gte(carriagePaidFrom))
  return new Big(isFree ? 0 : (carriage ?? 0))
}

function missingTo(goods: Big, threshold: string | null): string | null {
  return threshold === null || goods.gte(threshold) ? null : wordAmount(new Big(threshold).minus(goods))
}
