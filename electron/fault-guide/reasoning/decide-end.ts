import type { Belief } from './belief.ts'
import { rankCauses } from './weigh-causes.ts'

/** How probable each remedy is: a family to buy, or what is put right without a part. Likeliest first. */
export interface RankedRemedy {
  readonly remedy: string
  readonly probability: number
}

export type End =
  /** Another check may still tell. */
  | { readonly end: 'not-yet' }
  /** One remedy is likely enough to act on, or two between them where no check is left that tells them apart. */
  | { readonly end: 'settled'; readonly remedies: readonly RankedRemedy[] }
  /** No check is left and nothing is likely enough: the guide cannot tell. */
  | { readonly end: 'cannot-tell' }

/** Causes with the same remedy, such as two ways in which one part fails, count together. */
export function rankRemedies(belief: Belief, remedyOf: (cause: string) => string): RankedRemedy[] {
  const shares = new Map<string, number>()
  for (const [cause, probability] of belief) {
    const remedy = remedyOf(cause)
    shares.set(remedy, (shares.get(remedy) ?? 0) + probability)
  }
  return rankCauses(shares).map(({ cause, probability }) => ({ remedy: cause, probability }))
}

/** Whether it is time to stop asking. `remedies` are ranked and sum to 1. */
export function decideEnd(remedies: readonly RankedRemedy[], checksLeft: number): End {
  if (isLikelyEnough(remedies.slice(0, 1))) return { end: 'settled', remedies: remedies.slice(0, 1) }
  if (checksLeft > 0) return { end: 'not-yet' }
  const two = remedies.slice(0, 2)
  return isLikelyEnough(two) ? { end: 'settled', remedies: two } : { end: 'cannot-tell' }
}

/** From here on a remedy is acted on. Our choice: of twenty parts bought so, some three are bought in vain. */
export const likelyEnough = 0.85

function isLikelyEnough(remedies: readonly RankedRemedy[]): boolean {
  return remedies.reduce((total, { probability }) => total + probability, 0) >= likelyEnough
}
