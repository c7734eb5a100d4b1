import type { PartExplained } from '../../../shared-schemas/proposal.ts'
import { type DayNumber, dayNumberOf, daysPer, isoDateOf } from '../demand/time-buckets.ts'
import type { ShopPlan, StockPlan } from '../plan-stock.ts'

/**
 * Stock at the end of each coming week or month, if as much is asked for as is expected: with what is on order, which is
 * taken to come within the lead time, and with or without what is to be ordered now. Below 0 is owed.
 */
export function projectStock(
  { position, level, leadTime }: StockPlan,
  { asOf, bucket, reviewDays }: Pick<ShopPlan, 'asOf' | 'bucket' | 'reviewDays'>,
  quantity: number,
): PartExplained['projected'] {
  const now = position.position - position.onOrder
  const arrives = leadTime.days / daysPer(bucket)
  // As far as this order must last, and a little further.
  const length = fewestAhead + Math.ceil((leadTime.days + reviewDays) / daysPer(bucket))
  return Array.from({ length }, (_, at) => {
    const ahead = at + 1
    const hasCome = ahead >= arrives
    const without = now - level.meanPerBucket * ahead + (hasCome ? position.onOrder : 0)
    return {
      to: isoDateOf(endOf(dayNumberOf(asOf), ahead * daysPer(bucket))),
      without: rounded(without),
      with: rounded(without + (hasCome ? quantity : 0)),
    }
  })
}

const fewestAhead = 2

function endOf(day: DayNumber, ahead: number): DayNumber {
  return day + Math.round(ahead)
}

function rounded(pieces: number): number {
  return Math.round(pieces * 100) / 100
}

/** The last weeks or months, each with its first day; all of them, where they are fewer than a year. */
export function labelHistory(
  { history }: StockPlan,
  { asOf, bucket }: Pick<ShopPlan, 'asOf' | 'bucket'>,
): PartExplained['history'] {
  const shown = history.slice(-bucketsShown[bucket])
  return shown.map((pieces, at) => ({
    from: isoDateOf(dayNumberOf(asOf) + 1 - Math.round((shown.length - at) * daysPer(bucket))),
    pieces,
  }))
}

const bucketsShown = { week: 52, month: 24 } as const
