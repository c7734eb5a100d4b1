import type { ReviewLevels } from './simulate-review.ts'

export interface PresentFacts {
  /** What the vans' lists name of each part, added up, and what its shelf holds. */
  readonly listed: ReadonlyMap<number, number>
  readonly shelfLimits: ReadonlyMap<number, number>
}

/**
 * What the shop keeps today by its lists: a part on vans' lists or with a limit of its shelf is brought back to what these
 * hold together whenever some is gone. A part without either has no present level.
 */
export function listPresentLevels({ listed, shelfLimits }: PresentFacts): Map<number, ReviewLevels> {
  const parts = new Set([...listed.keys(), ...shelfLimits.keys()])
  return new Map(
    [...parts].map(partId => {
      const orderUpTo = (listed.get(partId) ?? 0) + (shelfLimits.get(partId) ?? 0)
      return [partId, { reorderPoint: Math.max(0, orderUpTo - 1), orderUpTo }]
    }),
  )
}
