import { type ExpectedReading, spread } from '../../catalogue/expected-reading.ts'
import { type Interval, readValue } from '../../catalogue/measured-values.ts'
import { heaterOhms } from './heater-resistance.ts'
import type { Conditions } from './read-measured.ts'
import { thermistorOhms } from './thermistor.ts'
import { wordFigure } from './word-figure.ts'

/** What is known of the appliance beside its guide, as it is printed: `220-240`, `2000`. */
export interface ReadingFacts {
  /** Of the rating plate. */
  readonly volts: string | null
  readonly watts: string | null
  /** Of the heater alone, as the catalogue states it; a range where several may be in it. */
  readonly heaterWatts?: string | null
  /** Of the thermistor, as the catalogue states it. */
  readonly ohmsAt25?: string | null
}

/** What is missing to judge a reading. */
export type MissingFact = 'volts' | 'heater-watts' | 'temperature' | 'ohms-at-25'

export type Limits =
  | {
      readonly ok: true
      readonly low: number
      readonly high: number
      /** How they were reckoned; null where the guide states them. */
      readonly from: string | null
    }
  | { readonly ok: false; readonly missing: MissingFact }

/** Within which a sound reading lies, the ends included. */
export function findLimits(
  expected: Exclude<ExpectedReading, { kind: 'changeover' }>,
  conditions: Conditions,
  facts: ReadingFacts,
): Limits {
  switch (expected.kind) {
    case 'limits':
      return {
        ok: true,
        low: expected.low ?? Number.NEGATIVE_INFINITY,
        high: expected.high ?? Number.POSITIVE_INFINITY,
        from: null,
      }
    case 'heater':
      return heaterLimits(expected, conditions, facts)
    case 'ntc':
      return thermistorLimits(expected, conditions, facts)
  }
}

/** A plate counts motor and pump as well, so that the heater may take this share less. Our choice. */
const shareBesideHeater = 0.25

function heaterLimits(
  { tolerance }: Extract<ExpectedReading, { kind: 'heater' }>,
  conditions: Conditions,
  facts: ReadingFacts,
): Limits {
  const volts = readFact(facts.volts, 'V')
  if (volts === undefined) return { ok: false, missing: 'volts' }
  const ofHeater =
    conditions.watts === null
      ? readFact(facts.heaterWatts, 'W')
      : { low: conditions.watts, high: conditions.watts }
  const ofPlate = readFact(facts.watts, 'W')
  const watts = ofHeater ?? ofPlate
  if (watts === undefined || !(watts.low > 0 && volts.low > 0)) return { ok: false, missing: 'heater-watts' }
  // A plate that states ranges states their ends together: the lower voltage goes with the lower power. What the
  // catalogue states are powers of different heaters, each of which may be in at either voltage.
  const powersWithLow = ofHeater === undefined ? [watts.low] : [watts.low, watts.high]
  const powersWithHigh = ofHeater === undefined ? [watts.high] : [watts.low, watts.high]
  const ends = [
    ...powersWithLow.map(power => heaterOhms({ watts: power, volts: volts.low })),
    ...powersWithHigh.map(power => heaterOhms({ watts: power, volts: volts.high })),
  ]
  const least = Math.min(...ends)
  const most = Math.max(...ends) / (ofHeater === undefined ? 1 - shareBesideHeater : 1)
  const beside = ofHeater === undefined ? ', the plate’s, of which the heater may take a quarter less' : ''
  return {
    ok: true,
    low: spread(least, tolerance).low,
    high: spread(most, tolerance).high,
    from: `R = U²/P with ${wordInterval(volts, 'V')} and ${wordInterval(watts, 'W')}${beside}`,
  }
}

function thermistorLimits(
  { ohmsAt25: ofGuide, betaKelvin, tolerance }: Extract<ExpectedReading, { kind: 'ntc' }>,
  { celsius }: Conditions,
  facts: ReadingFacts,
): Limits {
  if (celsius === null) return { ok: false, missing: 'temperature' }
  const ohmsAt25 = readFact(facts.ohmsAt25, 'Ω')?.low ?? ofGuide
  if (ohmsAt25 === null) return { ok: false, missing: 'ohms-at-25' }
  const { low, high } = spread(thermistorOhms({ ohmsAt25, betaKelvin }, celsius), tolerance)
  const named = `${wordFigure(ohmsAt25, 'Ω')} at 25 °C and B = ${betaKelvin} K, at ${wordFigure(celsius, '°C')}`
  return { ok: true, low, high, from: `R = R₂₅·exp(B·(1/T − 1/T₂₅)) with ${named}` }
}

/** A plate’s alternatives, `115/230`, do not tell which one the machine is set to, so they are not known. */
function readFact(stated: string | null | undefined, unit: string): Interval | undefined {
  const value = stated === null || stated === undefined ? undefined : readValue(stated, unit)
  if (value?.kind !== 'numbers' || value.alternatives.length !== 1) return undefined
  return value.alternatives[0]
}

function wordInterval({ low, high }: Interval, unit: string): string {
  return low === high ? wordFigure(low, unit) : `${wordFigure(low, '')} to ${wordFigure(high, unit)}`
}
