import type { DecisionWay } from '../../../shared-schemas/returns.ts'
import type { Decided } from '../../requests/refusal.ts'

export interface DecisionAsked {
  readonly returnId: string
  readonly way: DecisionWay
  /** Undefined: all that is undecided. */
  readonly quantity: number | undefined
  /** Undefined: not said. */
  readonly to: string | undefined
}

/** How many pieces of a return go where: to a shelf that is named, to the supplier, or into the scrap. */
export function planDecision(
  undecided: number,
  { returnId, way, quantity = undecided, to }: DecisionAsked,
): Decided<{ readonly quantity: number; readonly to: string }> {
  if (undecided === 0) return { ok: false, problem: { code: 'return-decided', returnId } }
  if (quantity > undecided)
    return { ok: false, problem: { code: 'return-has-fewer', returnId, undecided, wanted: quantity } }
  if (way === 'scrap') return { ok: true, value: { quantity, to: 'scrap' } }
  if (way === 'to-supplier') return { ok: true, value: { quantity, to: 'supplier' } }
  return to === undefined
    ? { ok: false, problem: { code: 'shelf-needed', returnId } }
    : { ok: true, value: { quantity, to } }
}
