import { type Interval, readValue } from './measured-values.ts'

/** What a check measures, and the unit in which its figures are kept. */
export const measureUnits = {
  resistance: 'Ω',
  voltage: 'V',
  current: 'A',
  power: 'W',
  capacitance: 'µF',
  pressure: 'bar',
  temperature: '°C',
  height: 'cm',
  /** What runs through in a minute. */
  flow: 'l',
  /** Of a flow meter, for each litre. */
  pulses: 'pulses',
  time: 's',
  /** A switch with one contact closed at rest and another closed when it is actuated. */
  changeover: '',
} as const

export type Measure = keyof typeof measureUnits
export const measures = Object.keys(measureUnits) as [Measure, ...Measure[]]

/** Either side of a value: a share of it, or so much in the unit of the measure. */
export type Tolerance =
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'amount'; readonly amount: number }

/** What a good part or a sound supply reads. */
export type ExpectedReading =
  /** Null: no limit on that side. */
  | { readonly kind: 'limits'; readonly low: number | null; readonly high: number | null }
  /** A heater's resistance out of its power and voltage, R = U²/P. */
  | { readonly kind: 'heater'; readonly tolerance: Tolerance }
  /** An NTC thermistor by its beta equation; without its ohms at 25 °C the model states them. */
  | {
      readonly kind: 'ntc'
      readonly ohmsAt25: number | null
      readonly betaKelvin: number
      readonly tolerance: Tolerance
    }
  | { readonly kind: 'changeover' }

export type ExpectedOrFault =
  | { readonly ok: true; readonly expected: ExpectedReading }
  | { readonly ok: false; readonly column: 'expected' | 'tolerance'; readonly reason: string }

/**
 * Reads what a check expects, as a person wrote it: `60..90 Ω`, `at least 1 MΩ`, `3.9 kΩ` with a tolerance of `10 %` or
 * `200 Ω`, `heater`, `ntc 4.8 kΩ at 25 °C, beta 3977 K`, `ntc beta 3977 K`, or `changes over`.
 */
export function readExpected(measure: Measure, expected: string, tolerance: string | null): ExpectedOrFault {
  const unit = measureUnits[measure]
  if ((measure === 'changeover') !== (expected === 'changes over')) return faulty(measure)
  if (measure === 'changeover') return withoutTolerance({ kind: 'changeover' }, tolerance)
  if (measure === 'resistance' && /^(heater|ntc)\b/.test(expected))
    return readFormula(expected, tolerance) ?? faulty(measure)
  const limit = /^at (least|most) (.+)$/.exec(expected)
  const interval = readOneInterval(limit?.[2] ?? expected, unit)
  if (interval === undefined) return faulty(measure)
  const { low, high } = interval
  if (limit !== null)
    return low === high
      ? withoutTolerance(
          limit[1] === 'least' ? { kind: 'limits', low, high: null } : { kind: 'limits', low: null, high },
          tolerance,
        )
      : faulty(measure)
  if (low < high) return withoutTolerance({ kind: 'limits', low, high }, tolerance)
  const either = readTolerance(tolerance, unit)
  return either === undefined
    ? faultyTolerance(unit)
    : { ok: true, expected: { kind: 'limits', ...spread(low, either) } }
}

/** The limits round a value. */
export function spread(value: number, tolerance: Tolerance): Interval {
  const amount = tolerance.kind === 'amount' ? tolerance.amount : Math.abs(value) * tolerance.share
  return { low: value - amount, high: value + amount }
}

function readFormula(expected: string, written: string | null): ExpectedOrFault | undefined {
  const tolerance = readTolerance(written, 'Ω')
  if (tolerance === undefined) return faultyTolerance('Ω')
  if (expected === 'heater') return { ok: true, expected: { kind: 'heater', tolerance } }
  const ntc = /^ntc(?: (.+) at 25 °C,)? beta (\d{3,4}) K$/.exec(expected)
  if (ntc === null) return undefined
  const ohmsAt25 = ntc[1] === undefined ? null : readOneInterval(ntc[1], 'Ω')
  if (ohmsAt25 === undefined || (ohmsAt25 !== null && !(ohmsAt25.low > 0))) return undefined
  return {
    ok: true,
    expected: { kind: 'ntc', ohmsAt25: ohmsAt25?.low ?? null, betaKelvin: Number(ntc[2]), tolerance },
  }
}

function readOneInterval(text: string, unit: string): Interval | undefined {
  const value = readValue(text, unit)
  if (value?.kind !== 'numbers' || value.alternatives.length !== 1) return undefined
  return value.alternatives[0]
}

function readTolerance(written: string | null, unit: string): Tolerance | undefined {
  const share = /^(\d{1,2}(?:\.\d+)?) ?%$/.exec(written ?? '')
  if (share !== null)
    return Number(share[1]) > 0 ? { kind: 'share', share: Number(share[1]) / 100 } : undefined
  const amount = readOneInterval(written ?? '', unit)
  return amount !== undefined && amount.low === amount.high && amount.low > 0
    ? { kind: 'amount', amount: amount.low }
    : undefined
}

function withoutTolerance(expected: ExpectedReading, tolerance: string | null): ExpectedOrFault {
  if (tolerance === null) return { ok: true, expected }
  return {
    ok: false,
    column: 'tolerance',
    reason: 'goes with a single value: leave it empty, or widen the limits',
  }
}

function faultyTolerance(unit: string): ExpectedOrFault {
  return {
    ok: false,
    column: 'tolerance',
    reason: `is needed with a single value: write 10 %, or an amount in ${unit}`,
  }
}

const examples: Readonly<Record<Measure, string>> = {
  resistance: '60..90 Ω, at least 1 MΩ, 3.9 kΩ, heater, or ntc 4.8 kΩ at 25 °C, beta 3977 K',
  voltage: '207..253 V',
  current: '0.2..0.4 A',
  power: '1800..2200 W',
  capacitance: '12 µF',
  pressure: '0.3..10 bar',
  temperature: '58..64 °C',
  height: '60..100 cm',
  flow: '6..12 l',
  pulses: '210..230 pulses',
  time: '30..90 s',
  changeover: 'changes over',
}

function faulty(measure: Measure): ExpectedOrFault {
  return {
    ok: false,
    column: 'expected',
    reason: `is no ${measure} that can be judged: write, for example, ${examples[measure]}`,
  }
}
