import type { InsteadOfBuying, LeftOut } from '../../../shared-schemas/proposal.ts'
import { lotsToOrder } from '../levels/order-quantity.ts'
import type { StockPlan } from '../plan-stock.ts'
import type { SpareStock, WantingPart } from './cover-from-stock.ts'
import type { WantedPart } from './gather-lines.ts'
import type { NamedPart } from './proposal-queries.ts'

/** A part with its plan and what it is called. */
export type NamedPlan = StockPlan & NamedPart

export interface Wanting {
  readonly parts: readonly (NamedPlan & WantingPart)[]
  readonly leftOut: readonly LeftOut[]
}

/** Which parts a review orders, and of the others those about which there is something to say. */
export function decideWanting(plans: readonly NamedPlan[], onSheets: ReadonlyMap<number, number>): Wanting {
  const parts: (NamedPlan & WantingPart)[] = []
  const leftOut: LeftOut[] = []
  for (const plan of plans) {
    const { partId, partNumber, description, position, life, needed } = plan
    const without = neededAt(plan, position.position - position.onOrder)
    if (needed > 0) parts.push({ ...plan, pieces: needed })
    else if (without > 0)
      leftOut.push({
        ...{ partNumber, description, why: 'on-order', pieces: without },
        text: wordComing(position.onOrder, onSheets.get(partId) ?? 0),
      })
    else if (life === 'dead' && position.onShelf > 0)
      leftOut.push({
        ...{ partNumber, description, why: 'dead', pieces: position.onShelf },
        text: `Nobody has asked for it for two years. In the shop: ${position.onShelf}.`,
      })
  }
  return { parts, leftOut }
}

/** What a review would order if so many were there and coming; a part without a level only as far as it is promised. */
export function neededAt({ level, lot }: StockPlan, available: number): number {
  const reorderPoint = level.orderUpTo === 0 ? -1 : level.reorderPoint
  return lotsToOrder(available, { reorderPoint, lot })
}

function wordComing(coming: number, onSheets: number): string {
  const sent = coming - onSheets
  const ways = [
    ...(sent > 0 ? [`${sent} on order`] : []),
    ...(onSheets > 0 ? [`${onSheets} on order sheets that are not sent yet`] : []),
  ]
  return `What would be ordered is coming: ${ways.join(', ')}.`
}

/** What of a part nobody needs: pieces in the shop above its own level, what is promised taken off. */
export function spareOf({ partId, partNumber, kind, level, life, position }: NamedPlan): SpareStock {
  const free = position.onShelf - position.reserved - position.vanShort
  return { partId, partNumber, kind, spare: Math.max(0, free - level.orderUpTo), isDead: life === 'dead' }
}

/** What is still to be bought when interchangeable stock is used first, and what falls away for it. */
export function takeOffCovered(
  wanting: readonly (NamedPlan & WantingPart)[],
  covered: ReadonlyMap<number, readonly InsteadOfBuying[]>,
): { readonly wanted: readonly WantedPart[]; readonly leftOut: readonly LeftOut[] } {
  const wanted: WantedPart[] = []
  const leftOut: LeftOut[] = []
  for (const part of wanting) {
    const { partId, partNumber, description } = part
    const instead = covered.get(partId) ?? []
    const pieces = part.pieces - instead.reduce((sum, { quantity }) => sum + quantity, 0)
    if (pieces > 0) wanted.push({ ...part, pieces, instead })
    else
      leftOut.push({
        ...{ partNumber, description, why: 'covered', pieces: part.pieces },
        text: `Interchangeable pieces lie in the shop: ${instead.map(wordInstead).join(', ')}. Use them first.`,
      })
  }
  return { wanted, leftOut }
}

function wordInstead({ quantity, partNumber, kind, isDead }: InsteadOfBuying): string {
  return `${quantity} of ${partNumber} (${kind}${isDead ? ', not asked for in two years' : ''})`
}
