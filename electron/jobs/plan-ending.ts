import type { Decided } from '../requests/refusal.ts'

export interface InHand {
  readonly partNumber: string
  readonly inHand: number
}

export interface GoesBack {
  readonly partNumber: string
  readonly quantity: number
}

/**
 * Whether a job may be ended with these pieces going back. Nothing goes back that is not in hand, and when the job is
 * over nothing is left in hand: it lies in a van or on a shelf, or it is in the appliance.
 */
export function planEnding(
  job: string,
  parts: readonly InHand[],
  { back, isOver }: { readonly back: readonly GoesBack[]; readonly isOver: boolean },
): Decided<true> {
  const goingBack = (partNumber: string) =>
    back.filter(line => line.partNumber === partNumber).reduce((sum, { quantity }) => sum + quantity, 0)
  for (const { partNumber } of back) {
    const inHand = parts.find(part => part.partNumber === partNumber)?.inHand ?? 0
    const wanted = goingBack(partNumber)
    if (wanted > inHand)
      return { ok: false, problem: { code: 'not-in-hand', job, part: partNumber, inHand, wanted } }
  }
  const left = parts
    .map(({ partNumber, inHand }) => ({ partNumber, quantity: inHand - goingBack(partNumber) }))
    .filter(({ quantity }) => quantity > 0)
  return isOver && left.length > 0
    ? { ok: false, problem: { code: 'parts-left-in-hand', job, parts: left } }
    : { ok: true, value: true }
}
