import type { InsteadOfBuying } from '../../../shared-schemas/proposal.ts'

/** A part that may stand for others, and what of it nobody needs. */
export interface SpareStock {
  readonly partId: number
  readonly partNumber: string
  readonly kind: 'genuine' | 'pattern'
  /** Pieces in the shop above what the part itself is to have. */
  readonly spare: number
  readonly isDead: boolean
}

export interface WantingPart {
  readonly partId: number
  readonly kind: 'genuine' | 'pattern'
  readonly pieces: number
}

/**
 * Interchangeable pieces that are used before any are bought, dead stock first: by the part that wants them. A pattern
 * part takes the place of a genuine one only where the shop allows that. A piece is used once: whoever wants most comes
 * first, so that one order line falls away rather than two shrink.
 */
export function coverFromStock(
  wanting: readonly WantingPart[],
  {
    interchangeable,
    spare,
    usesPatternStock,
  }: {
    /** By part, the parts that may be used in its place. */
    readonly interchangeable: ReadonlyMap<number, readonly number[]>
    readonly spare: ReadonlyMap<number, SpareStock>
    readonly usesPatternStock: boolean
  },
): ReadonlyMap<number, readonly InsteadOfBuying[]> {
  const left = new Map([...spare].map(([partId, stock]) => [partId, stock.spare]))
  const covered = new Map<number, InsteadOfBuying[]>()
  for (const { partId, kind, pieces } of wanting.toSorted((one, other) => other.pieces - one.pieces)) {
    let wanted = pieces
    const usable = (interchangeable.get(partId) ?? [])
      .flatMap(id => spare.get(id) ?? [])
      .filter(stock => usesPatternStock || kind === 'pattern' || stock.kind === 'genuine')
      .sort((one, other) => Number(other.isDead) - Number(one.isDead))
    for (const stock of usable) {
      const quantity = Math.min(wanted, left.get(stock.partId) ?? 0)
      if (quantity <= 0) continue
      left.set(stock.partId, (left.get(stock.partId) ?? 0) - quantity)
      wanted -= quantity
      const { partNumber, kind: stockKind, isDead } = stock
      const taken = { partNumber, kind: stockKind, quantity, isDead }
      covered.set(partId, [...(covered.get(partId) ?? []), taken])
    }
  }
  return covered
}
