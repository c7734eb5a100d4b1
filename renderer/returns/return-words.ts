import type { DecisionWay, PartReturn, ReturnKind } from '../../shared-schemas/returns.ts'

/** Why a part came back, as staff say it. */
export const kindWords: Readonly<Record<ReturnKind, string>> = {
  unused: 'unused',
  'wrong-fit': 'it did not fit',
  faulty: 'faulty',
  exchange: 'old unit in exchange',
  'for-supplier': 'off our shelf, for the supplier',
}

export const wayWords: Readonly<Record<DecisionWay, string>> = {
  'to-shelf': 'Back to a shelf',
  'to-supplier': 'To the supplier',
  scrap: 'Scrap',
}

/** A return in a line: how many of what, whence and why. */
export function wordReturn({ quantity, kind, from, reference, reason }: PartReturn): string {
  const whence = reference === null ? from : `${from} ${reference}`
  return `${quantity} from ${whence}, ${kindWords[kind]}: ${reason}`
}

/** What was decided about a return, and what is not decided yet. */
export function wordDecided({ decisions, undecided, quantity }: PartReturn): string {
  const decided = decisions.map(
    ({ quantity: pieces, to, reason, reference }) =>
      `${pieces} to ${to}: ${reason}${reference === null ? '' : ` (${reference})`}`,
  )
  if (undecided === 0) return `Decided. ${decided.join('; ')}.`
  const left = undecided === quantity ? 'Undecided' : `${undecided} undecided`
  return decided.length === 0 ? `${left}.` : `${decided.join('; ')}. ${left}.`
}

/** How staff usually put it, offered while the reason is typed (common practice). */
export const usualReasons: Readonly<Record<DecisionWay, readonly string[]>> = {
  'to-shelf': ['unused, bag sealed', 'tested and good'],
  'to-supplier': ['faulty, credit asked', 'sent in error', 'exchange unit'],
  scrap: ['broken', 'used, cannot be sold'],
}
