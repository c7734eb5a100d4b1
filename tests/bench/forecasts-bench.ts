import {
  classifyDemand,
  type DemandClass,
  shapeOfDemand,
} from '../../electron/reorder/demand/classify-demand.ts'
import {
  forecastCroston,
  forecastSyntetosBoylan,
  forecastTeunterSyntetosBabai,
} from '../../electron/reorder/demand/forecast-intermittent.ts'
import { daysPerMonth } from '../../electron/reorder/demand/time-buckets.ts'
import { type ExpectedPart, expectDemand } from '../../electron/reorder/levels/plan-levels.ts'
import { distributions } from './named-distributions.ts'
import { readCarParts } from './read-car-parts.ts'

/** Months 25 to 36 of the parts that had been asked for before: those on which things were chosen. */
const [from, to, horizon] = [24, 36, 2]

/** Which forecast comes nearest, and which distribution is true of what came, by class of demand. */
export async function run(): Promise<void> {
  const parts = readCarParts().filter(demand => demand.subarray(0, from).some(pieces => pieces > 0))
  const cases = Array.from({ length: to - horizon - from + 1 }, (_, at) => listCases(parts, from + at)).flat()
  for (const demandClass of ['smooth', 'erratic', 'intermittent', 'lumpy'] as const) {
    const some = cases.filter(found => found.demandClass === demandClass)
    if (some.length === 0) continue
    console.log(`  ${demandClass}: ${some.length} looks ahead over ${horizon} months`)
    console.log(`    mean absolute error of the forecast, and bias, in pieces: ${reportForecasts(some)}`)
    console.log(`    shortage of 0, 1, 2 and 4 pieces, as expected of what came: ${reportShortages(some)}`)
  }
}

interface Case {
  readonly demandClass: DemandClass
  readonly came: number
  /** Month by month, as far as it was known. */
  readonly series: readonly number[]
  readonly forecasts: Readonly<Record<string, number>>
  readonly expected: ExpectedPart
}

function listCases(parts: readonly Int32Array[], month: number): Case[] {
  const expected = expectDemand(
    parts.map((demand, partId) => ({
      ...{ partId, series: demand.subarray(0, month), lot: 1, shelfLimit: null },
      ...{ leadDays: (horizon - 1) * daysPerMonth, leadDaysDeviation: 0 },
    })),
    { daysPerBucket: daysPerMonth, reviewDays: daysPerMonth },
  )
  return parts.map((demand, at) => {
    const series = [...demand.subarray(0, month)]
    const part = expected[at]
    if (part === undefined) throw new Error('every part has what is expected of it')
    const year = series.slice(-12)
    return {
      demandClass: classifyDemand(shapeOfDemand(series)),
      came: demand.subarray(month, month + horizon).reduce((sum, pieces) => sum + pieces, 0),
      series,
      expected: part,
      forecasts: {
        'mean of a year': horizon * (year.reduce((sum, pieces) => sum + pieces, 0) / year.length),
        Croston: horizon * forecastCroston(series, { alpha: 0.1 }),
        SBA: horizon * forecastSyntetosBoylan(series, { alpha: 0.1 }),
        TSB: horizon * forecastTeunterSyntetosBabai(series, { alpha: 0.1, beta: 0.1 }),
        blend: horizon * part.meanPerBucket,
      },
    }
  })
}

function reportForecasts(cases: readonly Case[]): string {
  return Object.keys(cases[0]?.forecasts ?? {})
    .map(name => {
      const errors = cases.map(({ forecasts, came }) => (forecasts[name] ?? 0) - came)
      return `${name} ${mean(errors.map(Math.abs)).toFixed(3)} (${signed(mean(errors))})`
    })
    .join(', ')
}

/** What each distribution expects to be short of so much of each stock, beside what was. */
function reportShortages(cases: readonly Case[]): string {
  const sold = cases.filter(({ expected }) => expected.overProtection.mean > 0)
  const stocks = [0, 1, 2, 4]
  const came = stocks.map(stock => mean(sold.map(({ came: pieces }) => Math.max(0, pieces - stock))))
  const lines = Object.entries(distributions).map(([name, distribution]) => {
    const demands = sold.map(({ expected, series }) =>
      distribution({ ...expected.overProtection, months: horizon, series }),
    )
    return `${name} ${stocks.map(stock => mean(demands.map(demand => demand.expectedShortage(stock))).toFixed(3)).join(' ')}`
  })
  return [`came ${came.map(pieces => pieces.toFixed(3)).join(' ')}`, ...lines].join('; ')
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

function signed(figure: number): string {
  return `${figure < 0 ? '' : '+'}${figure.toFixed(3)}`
}
