import { candidates, type Leftover, type Shortage, type TopUpFacts } from './plan-top-up.ts'

export interface Spare {
  readonly wanted: string
  readonly partNumber: string
  readonly van: string
  readonly quantity: number
}

/**
 * What lies in other vans beyond their lists and would answer what this van is short of: a piece is offered once, and of
 * a line no more than are missing.
 */
export function findSpares(
  shortages: readonly Shortage[],
  vans: readonly { readonly van: string; readonly leftovers: readonly Leftover[] }[],
  facts: Pick<TopUpFacts, 'parts' | 'standIns' | 'prefer'>,
): Spare[] {
  const there = vans.flatMap(({ van, leftovers }) =>
    leftovers.map(({ partId, partNumber, quantity }) => ({ van, partId, partNumber, left: quantity })),
  )
  const spares: Spare[] = []
  for (const { line, missing } of shortages) {
    let wanted = missing
    for (const partId of candidates(line, facts))
      for (const spare of there.filter(one => one.partId === partId)) {
        const quantity = Math.min(wanted, spare.left)
        if (quantity <= 0) continue
        spare.left -= quantity
        wanted -= quantity
        spares.push({ wanted: line.name, partNumber: spare.partNumber, van: spare.van, quantity })
      }
  }
  return spares
}
