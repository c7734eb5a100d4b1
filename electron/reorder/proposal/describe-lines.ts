import { Big } from 'big.js'
import type { LeftOut, ProposedLine, ProposedOrder } from '../../../shared-schemas/proposal.ts'
import type { BuiltLine, BuiltOrder, LeftOut as NotBuilt } from '../building/build-orders.ts'
import type { BuildingFacts, OfferOnRecord, WantedPart } from './gather-lines.ts'
import { shortWith } from './spread-worth.ts'

/** What is known of the lines besides how they were built. */
export interface LineFacts extends BuildingFacts {
  readonly wanted: ReadonlyMap<string, WantedPart>
  readonly onSheets: ReadonlyMap<number, number>
}

/** An order as it was built, with everything that says why each line is there. */
export function describeOrder(
  { supplier, lines, goods, carriage }: BuiltOrder,
  facts: LineFacts,
): ProposedOrder {
  const terms = facts.suppliers.find(candidate => candidate.supplier === supplier)
  if (terms === undefined) throw new Error(`an order goes to a supplier on record, but ${supplier} is none`)
  const { name, currency, minimumOrder, carriage: usual, carriagePaidFrom } = terms
  return {
    ...{ supplier, name, currency, goods, carriage },
    terms: { minimumOrder, carriage: usual, carriagePaidFrom },
    total: wordAmount(new Big(goods).plus(carriage)),
    lines: lines.map(line => describeLine(line, supplier, facts)),
  }
}

function describeLine(
  { lineId, quantity, price }: BuiltLine,
  supplier: string,
  facts: LineFacts,
): ProposedLine {
  const part = wantedNamed(lineId, facts)
  const offers = facts.offers.get(part.partId) ?? []
  const own = offerFor(offers, supplier, quantity)
  const {
    partNumber,
    description,
    pieces: need,
    instead,
    position,
    lot,
    life,
    valueClass,
    leadTime,
    level,
  } = part
  const { partId: _id, ...levels } = level
  const onSheets = facts.onSheets.get(part.partId) ?? 0
  const { onShelf, vanSpare, vanShort, reserved } = position
  return {
    ...{ partNumber, description, quantity, need, unitPrice: price, flags: [] },
    amount: wordAmount(new Big(price).times(quantity)),
    supplierCode: own?.supplierCode ?? null,
    pack: own?.pack ?? 1,
    position: {
      ...{ onShelf, vanSpare, vanShort, reserved, onSheets },
      onOrder: position.onOrder - onSheets,
      available: position.position,
    },
    level: {
      ...{ ...levels, lot, life, valueClass },
      leadDays: leadTime.days,
      leadDaysDeviation: leadTime.deviation,
      leadTimeFrom: leadTime.from,
    },
    instead: [...instead],
    shortWithout: shortWith(position.position, facts.aheadOf(part)),
    elsewhere: facts.suppliers.flatMap(other => {
      const offer = other.supplier === supplier ? undefined : offerFor(offers, other.supplier, quantity)
      return offer === undefined
        ? []
        : [{ supplier: other.supplier, unitPrice: offer.price, currency: other.currency }]
    }),
  }
}

/** A part that was wanted and is not on any order, with why in words. */
export function describeNotBuilt({ lineId, why }: NotBuilt, facts: LineFacts): LeftOut {
  const { partId, partNumber, description, pieces } = wantedNamed(lineId, facts)
  const sellers = [...new Set(facts.offers.get(partId)?.map(({ supplier }) => supplier))].join(' or ')
  const texts: Readonly<Record<NotBuilt['why'], string>> = {
    'no-offer': `${pieces} wanted, and no supplier on record offers it. Ask, and load the offer.`,
    budget: `${pieces} wanted; the budget of ${facts.budget} goes to what is worth more for its money.`,
    'minimum-order': `${pieces} wanted; no order to ${sellers} reaches the minimum. Wait, or order more there.`,
    'not-worth-it': `${pieces} wanted; carriage or a minimum order would cost more than having it now is worth.`,
  }
  return { partNumber, description, why, pieces, text: texts[why] }
}

function wantedNamed(partNumber: string, { wanted }: LineFacts): WantedPart {
  const part = wanted.get(partNumber)
  if (part === undefined) throw new Error(`a line is of a part that is wanted, but ${partNumber} is not`)
  return part
}

/** The row of a supplier's offer that holds for so many pieces. */
function offerFor(offers: readonly OfferOnRecord[], supplier: string, quantity: number) {
  return offers.findLast(offer => offer.supplier === supplier && offer.fromQuantity <= quantity)
}

/** At least two decimals, and never fewer than the amount has. */
export function wordAmount(amount: Big): string {
  return amount.toFixed(Math.max(2, amount.toFixed().split('.')[1]?.length ?? 0))
}
