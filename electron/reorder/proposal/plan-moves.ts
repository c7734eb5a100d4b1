import type { Proposal } from '../../../shared-schemas/proposal.ts'
import { type NamedPlan, neededAt } from './plan-wanted.ts'

/** Pieces of a part in a van that its list does not ask for. */
export interface SpareInVan {
  readonly partId: number
  readonly van: string
  readonly quantity: number
}

/** What to bring to the shop from vans before anything is bought: only as far as the shop itself runs low. */
export function planMoves(plans: readonly NamedPlan[], spare: readonly SpareInVan[]): Proposal['moves'] {
  const byPart = Map.groupBy(spare, ({ partId }) => partId)
  return plans.flatMap(plan => {
    const { position, partNumber, description } = plan
    let short = neededAt(plan, position.position - position.vanSpare)
    return (byPart.get(plan.partId) ?? []).flatMap(({ van, quantity: there }) => {
      const quantity = Math.min(short, there)
      short -= quantity
      return quantity > 0 ? [{ partNumber, description, quantity, from: van }] : []
    })
  })
}
