import { Big } from 'big.js'
import type { ValueClass } from '../../../shared-schemas/stock-levels.ts'

/** Pieces of a part used in a year, and what one costs as a decimal. */
export interface YearlyUse {
  readonly partId: number
  readonly pieces: number
  readonly price: string
}

/**
 * Ranks parts by the value of what is used of them in a year. In falling order, a part is A while the values up to and with
 * it are at most 80 % of all, B while they are at most 95 %, else C; but the first is always A. Equal values stand in the
 * order of their ids. Cuts of 80 and 95 % are common practice.
 */
export function rankByValue(uses: readonly YearlyUse[]): ReadonlyMap<number, ValueClass> {
  const valued = uses
    .map(({ partId, pieces, price }) => ({ partId, value: Number(new Big(price).times(pieces)) }))
    .filter(({ value }) => value > 0)
    .sort((one, other) => other.value - one.value || one.partId - other.partId)
  const total = valued.reduce((sum, { value }) => sum + value, 0)
  const classes = new Map<number, ValueClass>()
  let sum = 0
  for (const { partId, value } of valued) {
    sum += value
    classes.set(partId, classes.size === 0 || sum <= 0.8 * total ? 'A' : sum <= 0.95 * total ? 'B' : 'C')
  }
  return classes
}
