import { Big } from 'big.js'
import type { DraftLine } from '../../shared-schemas/order-sheets.ts'
import type { Part } from '../catalogue/part-queries.ts'
import type { Decided } from '../requests/refusal.ts'

/** What one supplier asks for a part from a quantity on. */
export interface SheetOffer {
  readonly supplierCode: string | null
  readonly price: string
  readonly fromQuantity: number
  readonly pack: number
}

export interface FilledLine extends Omit<DraftLine, 'part'> {
  readonly partId: Part['partId']
  readonly pack: number
  readonly unitPrice: string
}

/** The line with what the draft leaves out taken from the supplier's offer; without a price anywhere it is refused. */
export function fillLine(
  { part: _typed, ...draft }: DraftLine,
  {
    part,
    offers,
    supplier,
  }: { readonly part: Part; readonly offers: readonly SheetOffer[]; readonly supplier: string },
): Decided<FilledLine> {
  const offer = bestOffer(offers, draft.quantity)
  const unitPrice = draft.unitPrice ?? offer?.price
  if (unitPrice === undefined)
    return { ok: false, problem: { code: 'price-not-known', part: part.partNumber, supplier } }
  const supplierCode = draft.supplierCode ?? offer?.supplierCode ?? undefined
  return {
    ok: true,
    value: {
      ...draft,
      partId: part.partId,
      unitPrice,
      pack: draft.pack ?? offer?.pack ?? 1,
      ...(supplierCode === undefined ? {} : { supplierCode }),
    },
  }
}

/** The lowest price for this quantity; below every offer, the one that begins first. */
function bestOffer(offers: readonly SheetOffer[], quantity: number): SheetOffer | undefined {
  const inReach = offers.filter(({ fromQuantity }) => fromQuantity <= quantity)
  if (inReach.length > 0) return inReach.toSorted((one, other) => new Big(one.price).cmp(other.price))[0]
  return offers.toSorted((one, other) => one.fromQuantity - other.fromQuantity)[0]
}
