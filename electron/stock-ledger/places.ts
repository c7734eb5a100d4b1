import type { Movement, OutsidePlace } from '../../shared-schemas/stock-ledger.ts'

/** Where a movement begins or ends: a location of the shop, or a place outside it. */
export type Place =
  | { readonly locationId: number; readonly outside: null }
  | { readonly locationId: null; readonly outside: OutsidePlace }

export type MovementKind = Movement['kind']

/**
 * What a movement between two places is called in the book. Undefined for one that never touches the shop, that goes
 * nowhere, or that the trade does not know, such as a supplier who takes a part out of a count.
 */
export function kindOfMovement(from: Place, to: Place): MovementKind | undefined {
  if (from.outside === null && to.outside === null)
    return from.locationId === to.locationId ? undefined : 'transfer'
  if (from.outside !== null && to.outside !== null) return undefined
  return from.outside === null ? kindOfLeaving[to.outside ?? 'count'] : kindOfArriving[from.outside]
}

const kindOfArriving: Partial<Record<OutsidePlace, MovementKind>> = {
  supplier: 'receipt',
  customer: 'return',
  job: 'return',
  count: 'adjustment',
  opening: 'receipt',
}

const kindOfLeaving: Partial<Record<OutsidePlace, MovementKind>> = {
  supplier: 'return',
  customer: 'issue',
  job: 'issue',
  scrap: 'adjustment',
  count: 'adjustment',
  opening: 'adjustment',
}
