import type {
  OrderProblem,
  PriceRow,
  WantedLine,
} from '../../../../electron/reorder/building/order-problem.ts'

/** What the best order comes to, in hundredths, found by trying every one. Shares no code with the program. */
export function leastByTrying({ suppliers, lines, budget }: OrderProblem): number {
  const ways = lines.map(line => [undefined, ...waysToBuy(line)])
  const lowest = lines.map(line =>
    Math.min(
      ...waysToBuy(line).map(way => way.pays - hundredths(line.extraWorth) * (way.pieces - line.need)),
    ),
  )
  let least = Number.POSITIVE_INFINITY
  const goods = new Map<string, number>()
  const tryFrom = (at: number, sum: number): void => {
    const [line, options] = [lines[at], ways[at]]
    if (line === undefined || options === undefined) {
      least = Math.min(least, settle(sum))
      return
    }
    for (const way of options) {
      if (way === undefined) {
        tryFrom(at + 1, sum + (lowest[at] ?? 0) + hundredths(line.worth))
        continue
      }
      const before = goods.get(way.supplier) ?? 0
      goods.set(way.supplier, before + way.pays)
      tryFrom(at + 1, sum - hundredths(line.extraWorth) * (way.pieces - line.need))
      goods.set(way.supplier, before)
    }
  }
  const settle = (sum: number): number => {
    let paid = 0
    for (const { supplier, carriage, carriagePaidFrom, minimumOrder } of suppliers) {
      const value = goods.get(supplier) ?? 0
      if (value === 0) continue
      if (minimumOrder !== null && value < hundredths(minimumOrder)) return Number.POSITIVE_INFINITY
      const isFree = carriagePaidFrom !== null && value >= hundredths(carriagePaidFrom)
      paid += value + (isFree ? 0 : hundredths(carriage ?? '0'))
    }
    if (budget !== null && paid > hundredths(budget)) return Number.POSITIVE_INFINITY
    return sum + paid
  }
  tryFrom(0, 0)
  return least
}

interface Way {
  readonly supplier: string
  readonly pieces: number
  readonly pays: number
}

/** Every quantity that a supplier sends and the line may take. */
function waysToBuy({ need, most, offers }: WantedLine): Way[] {
  return offers.flatMap(({ supplier, rows }) => {
    const sold: Way[] = []
    for (let pieces = need; pieces <= need + 30; pieces++) {
      const row = rows.findLast(({ from }) => from <= pieces)
      if (row === undefined || !sells(row, pieces)) continue
      if (sold.length > 0 && pieces > most) break
      sold.push({ supplier, pieces, pays: pieces * hundredths(row.price) })
    }
    return sold
  })
}

function sells({ minimum, pack }: PriceRow, pieces: number): boolean {
  return pieces >= minimum && pieces % pack === 0
}

export function hundredths(amount: string): number {
  return Math.round(Number(amount) * 100)
}
