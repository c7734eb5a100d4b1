import type { Arrival } from '../../../shared-schemas/goods-in.ts'
import type { Decided } from '../../requests/refusal.ts'
import type { StoredLine } from '../sheet-queries.ts'

/** One movement of a delivery, as the ledger is to record it. */
export interface PlannedArrival {
  readonly line: number
  readonly part: string
  readonly quantity: number
  readonly condition: Arrival['condition']
  readonly to: string
  readonly reason: string
  /** For one piece in the currency of the book; undefined is not known. */
  readonly unitCost: string | undefined
}

export interface Receiving {
  readonly number: string
  readonly lines: readonly StoredLine[]
  readonly deliveryNote: string
  /** Whether the sheet's prices are in the currency of the book: otherwise they are no costs of it. */
  readonly isBookCurrency: boolean
  readonly to: string
  readonly quarantine: string
}

/**
 * What a delivery moves: good pieces to their place and damaged ones into quarantine, at what was paid. A substitute
 * costs what is said, since the price of the line was for another part.
 */
export function planReceipt(
  receiving: Receiving,
  arrivals: readonly (Arrival & { readonly isSubstitute: boolean })[],
): Decided<PlannedArrival[]> {
  const planned: PlannedArrival[] = []
  for (const arrival of arrivals) {
    const ordered = receiving.lines.find(({ line }) => line === arrival.line)
    if (ordered === undefined)
      return {
        ok: false,
        problem: { code: 'line-not-on-sheet', number: receiving.number, line: arrival.line },
      }
    const { line, quantity, condition, part = ordered.partNumber, isSubstitute } = arrival
    const agreed = isSubstitute || !receiving.isBookCurrency ? undefined : ordered.unitPrice
    planned.push({
      ...{ line, part, quantity, condition },
      to: condition === 'damaged' ? receiving.quarantine : receiving.to,
      reason: wordReason(arrival, { ordered: ordered.partNumber, deliveryNote: receiving.deliveryNote }),
      unitCost: arrival.unitPrice ?? agreed,
    })
  }
  return { ok: true, value: planned }
}

/** `delivery, note 4711, damaged, in place of P-100: the same pump`. */
function wordReason(
  { condition, isSubstitute, takenBecause }: Arrival & { readonly isSubstitute: boolean },
  { ordered, deliveryNote }: { readonly ordered: string; readonly deliveryNote: string },
): string {
  const why = takenBecause === undefined ? '' : `: ${takenBecause}`
  return [
    'delivery',
    ...(deliveryNote === '' ? [] : [`note ${deliveryNote}`]),
    ...(condition === 'damaged' ? ['damaged'] : []),
    ...(isSubstitute ? [`in place of ${ordered}${why}`] : []),
  ].join(', ')
}
