/** How many pieces of one part went which way for one job, as summed from the ledger and from what was marked. */
export interface PartCounts {
  readonly taken: number
  readonly broughtBack: number
  readonly fitted: number
}

/** Pieces that are neither in a place of the shop nor in the appliance. Below 0: fitted, and never booked as taken. */
export function reckonInHand({ taken, broughtBack, fitted }: PartCounts): number {
  return taken - broughtBack - fitted
}

export interface NeedAsked {
  readonly familyId: number
  /** Null where any part of the family will do. */
  readonly partId: number | null
  readonly quantity: number
}

export interface PartThere extends PartCounts {
  readonly partId: number
  readonly familyId: number
}

/**
 * Which needs are met by what was taken and not brought back, or fitted. Needs that name a part take theirs first, since
 * only that part will do; a piece meets one need.
 */
export function markMetNeeds<Need extends NeedAsked>(
  needs: readonly Need[],
  parts: readonly PartThere[],
): (Need & { readonly isMet: boolean })[] {
  const left = new Map(
    parts.map(part => [
      part.partId,
      { familyId: part.familyId, pieces: Math.max(part.taken - part.broughtBack, part.fitted) },
    ]),
  )
  const byPartFirst = needs.toSorted(
    (one, other) => Number(one.partId === null) - Number(other.partId === null),
  )
  const met = new Map(byPartFirst.map(need => [need, takeAll(need, left)]))
  return needs.map(need => ({ ...need, isMet: met.get(need) ?? false }))
}

/** Takes the pieces of a need out of what is left, and says whether there were enough. */
function takeAll(
  { familyId, partId, quantity }: NeedAsked,
  left: ReadonlyMap<number, { readonly familyId: number; pieces: number }>,
): boolean {
  let wanted = quantity
  for (const [id, there] of left) {
    if (partId === null ? there.familyId !== familyId : id !== partId) continue
    const taken = Math.min(wanted, Math.max(0, there.pieces))
    there.pieces -= taken
    wanted -= taken
  }
  return wanted === 0
}
