import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { flag } from './flag-table.ts'
import { type CompanionFacts, type LineFacts, piecesOf } from './line-facts.ts'

/** How many pieces the order asks for, by number, and on which lines; what comes in a kit counts. */
type Ordered = ReadonlyMap<string, { readonly pieces: number; readonly lines: readonly number[] }>

/** How many pieces of each number go in together with the parts of all lines, besides those that their kits hold. */
export function countCompanions(order: readonly LineFacts[]): ReadonlyMap<string, number> {
  const wanted = new Map<string, number>()
  for (const { companions } of order)
    for (const { partNumber, quantity, from } of companions)
      if (from === 'besides') wanted.set(partNumber, (wanted.get(partNumber) ?? 0) + quantity)
  return wanted
}

export interface CompanionsOfOrder {
  readonly ordered: Ordered
  readonly wanted: ReadonlyMap<string, number>
  /** The lines on which the same part is delivered for the same appliance, this one among them. */
  readonly same: readonly LineFacts[]
}

/** A pair of which only one is ordered, and what goes in together with a part: whether it is ordered, in stock, or missing. */
export function flagReplacedTogether(facts: LineFacts, order: CompanionsOfOrder): OrderFlag[] {
  return facts.companions.flatMap(companion => {
    if (companion.partId === facts.current?.partId) return flagPair(companion, order)
    return companion.from === 'besides' ? flagCompanion(facts, companion, order) : []
  })
}

function flagPair({ partNumber, quantity, why }: CompanionFacts, { same }: CompanionsOfOrder): OrderFlag[] {
  const pieces = same.reduce((sum, line) => sum + (piecesOf(line) ?? 0), 0)
  if (pieces >= quantity) return []
  return [
    flag(
      'replaced-together-short',
      `${quantity} of ${partNumber} are replaced together${wordReason(why)}; ${pieces} on this order. Order ${quantity}, unless the rest is at hand.`,
    ),
  ]
}

function flagCompanion(
  { part }: LineFacts,
  { partNumber, quantity, why, moves }: CompanionFacts,
  { ordered, wanted }: CompanionsOfOrder,
): OrderFlag[] {
  const found = ordered.get(partNumber)
  const inStock = moves.reduce((sum, place) => sum + place.quantity, 0)
  const needed = wanted.get(partNumber) ?? quantity
  const goes = `${partNumber} is replaced together with ${part?.partNumber ?? 'this part'}${wordReason(why)}`
  const lines =
    found === undefined ? [] : [`line${found.lines.length === 1 ? '' : 's'} ${found.lines.join(', ')}`]
  const places = moves.map(place => `${place.quantity} in ${place.name}`)
  const where = [...lines, ...places]
  const text =
    where.length === 0
      ? `${goes}: it is neither on this order nor in stock. Add ${needed}.`
      : `${goes}: ${needed} in all; ${where.join(', ')}.`
  const isCovered = (found?.pieces ?? 0) + inStock >= needed
  return [flag(isCovered ? 'replaced-together-ready' : 'replaced-together-missing', text)]
}

function wordReason(why: string | null): string {
  return why === null ? '' : ` (${why})`
}
