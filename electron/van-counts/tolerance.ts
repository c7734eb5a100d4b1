import { Big } from 'big.js'

export type ValueClass = 'A' | 'B' | 'C'

export interface ValuedPart {
  readonly partId: number
  /** What a year's use of it costs, in the shop's currency. */
  readonly yearlyValue: Big
}

/**
 * Value classes by yearly use. In the order of their value, and each share reckoned with the part itself: up to 80 % of
 * all use A, up to 95 % B, the rest C. Books group by eye; this is the rule written down. Without any use all are C.
 */
export function classifyByValue(parts: readonly ValuedPart[]): ReadonlyMap<number, ValueClass> {
  const total = parts.reduce((sum, { yearlyValue }) => sum.plus(yearlyValue), new Big(0))
  const ranked = [...parts].sort(
    (one, other) => other.yearlyValue.cmp(one.yearlyValue) || one.partId - other.partId,
  )
  let reached = new Big(0)
  return new Map(
    ranked.map(({ partId, yearlyValue }) => {
      reached = reached.plus(yearlyValue)
      if (total.eq(0)) return [partId, 'C']
      const share = reached.div(total)
      return [partId, share.lte('0.8') ? 'A' : share.lte('0.95') ? 'B' : 'C']
    }),
  )
}

/** By how much of the book a line may be off and still count as right: common figures of record accuracy. */
const tolerated: Readonly<Record<ValueClass, number>> = { A: 0.01, B: 0.03, C: 0.05 }

/** Whether a counted line is right within the tolerance of its class. Nothing is netted: each line stands for itself. */
export function isWithinTolerance(
  { book, counted }: { readonly book: number; readonly counted: number },
  valueClass: ValueClass,
): boolean {
  return Math.abs(counted - book) <= tolerated[valueClass] * Math.abs(book)
}

/** Share of lines within tolerance, from 0 to 1; null without lines. */
export function recordAccuracy(lines: readonly { readonly isWithin: boolean }[]): number | null {
  return lines.length === 0 ? null : lines.filter(({ isWithin }) => isWithin).length / lines.length
}
