import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { flag } from './flag-table.ts'
import { type LineFacts, piecesOf, type SupplierOffer } from './line-facts.ts'

/**
 * Whether the supplier can deliver the line as it is written. Without a chosen supplier it is enough that anybody can.
 */
export function flagOffers(facts: LineFacts, supplier: string | undefined): OrderFlag[] {
  const { part, offers } = facts
  if (part === undefined) return []
  const eligible = offersOf(offers, supplier)
  if (eligible.length === 0) return [flagNotOffered(part.partNumber, offers, supplier)]
  const pieces = piecesOf(facts)
  if (pieces === undefined || eligible.some(offer => delivers(offer, pieces))) return []
  return [flagPacks(part.partNumber, eligible, pieces)]
}

export function offersOf(offers: readonly SupplierOffer[], supplier: string | undefined) {
  return supplier === undefined ? offers : offers.filter(offer => offer.supplier === supplier)
}

export function delivers(offer: SupplierOffer, pieces: number): boolean {
  return pieces >= startsAt(offer) && pieces % offer.pack === 0
}

function flagNotOffered(
  partNumber: string,
  offers: readonly SupplierOffer[],
  supplier: string | undefined,
): OrderFlag {
  const others = [...new Set(offers.map(offer => offer.supplier))].sort()
  if (supplier === undefined)
    return flag('not-offered', `No supplier on record offers ${partNumber}. Ask before ordering.`)
  const elsewhere =
    others.length > 0 ? `Order it from ${others.join(' or ')}.` : 'Nobody else on record offers it either.'
  return flag('not-offered-by-supplier', `${supplier} does not offer ${partNumber}. ${elsewhere}`)
}

function flagPacks(partNumber: string, offers: readonly SupplierOffer[], pieces: number): OrderFlag {
  const inReach = offers.filter(offer => startsAt(offer) <= pieces)
  const least = Math.min(...offers.map(leastQuantity))
  if (inReach.length === 0)
    return flag(
      'below-minimum',
      `${nameSuppliers(offers)} ${partNumber} from ${least} pieces on; the line orders ${pieces}. Order ${least}, or leave it for later.`,
    )
  const pack = Math.min(...inReach.map(offer => offer.pack))
  const below = Math.floor(pieces / pack) * pack
  const whole = [below, below + pack].filter(quantity => inReach.some(offer => delivers(offer, quantity)))
  return flag(
    'not-whole-packs',
    `${nameSuppliers(inReach)} ${partNumber} in packs of ${pack}; ${pieces} is no whole number of packs. Order ${whole.join(' or ')}.`,
  )
}

function startsAt({ fromQuantity, minimum }: SupplierOffer): number {
  return Math.max(fromQuantity, minimum)
}

/** The smallest order that this offer can deliver. */
function leastQuantity(offer: SupplierOffer): number {
  return Math.ceil(startsAt(offer) / offer.pack) * offer.pack
}

function nameSuppliers(offers: readonly SupplierOffer[]): string {
  const names = [...new Set(offers.map(({ supplier }) => supplier))].sort()
  return names.length === 1 ? `${names[0]} sells` : `${names.join(' and ')} sell`
}
