import { toUnits } from './money-units.ts'
import type { LineOffer, OrderProblem, PriceRow, WantedLine } from './order-problem.ts'

/** One way to have a line: this offer in this quantity. Money in whole units. */
export interface Choice {
  readonly line: number
  readonly supplier: number
  readonly offer: LineOffer
  readonly row: PriceRow
  readonly quantity: number
  /** What the supplier is paid for it. */
  readonly spend: number
  /** The same less what the pieces beyond the need are worth. */
  readonly cost: number
}

export interface SupplierInUnits {
  readonly carriage: number
  /** Infinite where carriage is never paid by the supplier. */
  readonly paidFrom: number
  readonly minimum: number
}

/** The problem as a choice for each line, or to leave it out at a price. Money in whole units. */
export interface ChoiceProblem {
  readonly lines: readonly (readonly Choice[])[]
  /** By line: what leaving it out counts for, which is its lowest cost and its worth. */
  readonly leaveOut: readonly number[]
  readonly suppliers: readonly SupplierInUnits[]
  /** Infinite where there is no limit. */
  readonly budget: number
}

/**
 * Every choice there is: of each offer the least quantity that covers the need, then further packs up to `most`, and
 * where the next price begins. Beyond the least, up to eight packs of a price are looked at; more would only fill up a
 * threshold that other lines fill up better.
 */
export function listChoices({ suppliers, lines, budget }: OrderProblem): ChoiceProblem {
  const places = new Map(suppliers.map(({ supplier }, at) => [supplier, at]))
  const choices = lines.map((line, at) =>
    line.offers.flatMap(offer => choicesOf(line, offer, at, placeOf(places, offer.supplier))),
  )
  return {
    lines: choices,
    leaveOut: lines.map(
      ({ worth }, at) => Math.min(...(choices[at] ?? []).map(({ cost }) => cost)) + toUnits(worth),
    ),
    suppliers: suppliers.map(({ carriage, carriagePaidFrom, minimumOrder }) => ({
      carriage: toUnits(carriage ?? '0'),
      paidFrom: carriagePaidFrom === null ? Number.POSITIVE_INFINITY : toUnits(carriagePaidFrom),
      minimum: toUnits(minimumOrder ?? '0'),
    })),
    budget: budget === null ? Number.POSITIVE_INFINITY : toUnits(budget),
  }
}

const mostFurtherPacks = 8

function choicesOf(line: WantedLine, offer: LineOffer, at: number, supplier: number): Choice[] {
  const extraWorth = toUnits(line.extraWorth)
  const quantities = offer.rows.flatMap((row, place) => {
    const before = (offer.rows[place + 1]?.from ?? Number.POSITIVE_INFINITY) - 1
    const least = Math.ceil(Math.max(row.from, row.minimum, line.need) / row.pack) * row.pack
    const found: { row: PriceRow; quantity: number }[] = []
    for (let packs = 0; packs <= mostFurtherPacks && least + packs * row.pack <= before; packs++)
      found.push({ row, quantity: least + packs * row.pack })
    return found
  })
  const leastOfAll = Math.min(...quantities.map(({ quantity }) => quantity))
  return quantities
    .filter(({ quantity }) => quantity === leastOfAll || quantity <= line.most)
    .map(({ row, quantity }) => {
      const spend = toUnits(row.price) * quantity
      return {
        ...{ line: at, supplier, offer, row, quantity, spend },
        cost: spend - extraWorth * (quantity - line.need),
      }
    })
}

function placeOf(places: ReadonlyMap<string, number>, supplier: string): number {
  const place = places.get(supplier)
  if (place === undefined) throw new Error(`the terms of every supplier are given, but not of ${supplier}`)
  return place
}
