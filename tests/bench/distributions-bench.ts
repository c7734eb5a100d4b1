import { daysPerMonth } from '../../electron/reorder/demand/time-buckets.ts'
import { type ExpectedPart, expectDemand, shareOutLevels } from '../../electron/reorder/levels/plan-levels.ts'
import { play, stockAt } from './back-test.ts'
import { distributions } from './named-distributions.ts'
import { readCarParts } from './read-car-parts.ts'

/** Months 25 to 36, on which things were chosen, of the parts that had been asked for before. */
const [from, to] = [24, 36]
const targets = [0.84, 0.87, 0.9, 0.92, 0.94, 0.95, 0.96, 0.97, 0.98, 0.985, 0.99]

/** Which distribution needs the least stock for a fill rate, everything else being as it is, and how true its targets come. */
export async function run(): Promise<void> {
  const parts = readCarParts().filter(demand => demand.subarray(0, from).some(pieces => pieces > 0))
  for (const leadMonths of [1, 2]) {
    console.log(
      `  lead time ${leadMonths}: pieces on hand at 90 and 95 %; what came of targets of 90, 95, 98 %`,
    )
    for (const name of Object.keys(distributions)) {
      const played = playWith(name, parts, leadMonths)
      const stocks = [0.9, 0.95].map(fillRate => stockAt(played, fillRate).toFixed(0))
      const came = [0.9, 0.95, 0.98].map(target => percent(played[targets.indexOf(target)]?.fillRate ?? 0))
      console.log(`    ${name}: ${stocks.join(', ')}; ${came.join(', ')} %`)
    }
  }
}

function playWith(name: string, parts: readonly Int32Array[], leadMonths: number) {
  const months = Array.from({ length: to - from }, (_, at) => {
    const month = from + at
    const expected = expectAt(parts, leadMonths, month).map((part, which) =>
      redraw(part, { name, leadMonths, series: [...(parts[which] ?? [])].slice(0, month) }),
    )
    return targets.map(target => shareOutLevels(expected, target).levels)
  })
  return targets.map((_, at) =>
    play(
      { parts, from, to, leadMonths },
      (month, part) => months[month - from]?.[at]?.[part] ?? { reorderPoint: 0, orderUpTo: 0 },
    ),
  )
}

function expectAt(parts: readonly Int32Array[], leadMonths: number, month: number): readonly ExpectedPart[] {
  return expectDemand(
    parts.map((demand, partId) => ({
      ...{ partId, series: demand.subarray(0, month), leadDays: leadMonths * daysPerMonth },
      ...{ leadDaysDeviation: 0, lot: 1, shelfLimit: null },
    })),
    { daysPerBucket: daysPerMonth, reviewDays: daysPerMonth },
  )
}

interface Redrawn {
  readonly name: string
  readonly leadMonths: number
  readonly series: readonly number[]
}

/** The same part with what another distribution would leave short, as `shortageByStock` has it. */
function redraw(part: ExpectedPart, { name, leadMonths, series }: Redrawn): ExpectedPart {
  const distribution = distributions[name]
  if (distribution === undefined || part.meanPerBucket <= 0 || part.step !== 1) return part
  const { ratio } = part.overProtection
  const [atEnd, atBeginning] = [leadMonths + 1, leadMonths].map(months =>
    distribution({ mean: part.meanPerBucket * months, ratio, months, series }),
  )
  const shortage = (stock: number) =>
    (atEnd?.expectedShortage(stock) ?? 0) - (atBeginning?.expectedShortage(stock) ?? 0)
  return { ...part, short: part.short.map((_, stock) => Math.max(0, shortage(stock))) }
}

function percent(share: number): string {
  return (100 * share).toFixed(1)
}
