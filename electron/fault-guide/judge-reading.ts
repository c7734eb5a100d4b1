import type { FaultCheck } from '../../shared-schemas/fault-guide.ts'
import { type Measure, measures, measureUnits, readExpected } from '../catalogue/expected-reading.ts'
import type { Decided } from '../requests/refusal.ts'
import { findLimits, type Limits, type ReadingFacts } from './readings/find-limits.ts'
import { type MeasuredReading, readMeasured } from './readings/read-measured.ts'
import { wordFigure, wordLimits } from './readings/word-figure.ts'

/** Which outcome of a check a reading comes to, and why in words with its figures. */
export interface JudgedReading {
  readonly outcome: string
  readonly why: string
}

/**
 * Judges a reading, as it was typed, against what the check expects. Refused where it cannot be read, or where something
 * is missing that the limits are reckoned from.
 */
export function judgeReading(check: FaultCheck, typed: string, facts: ReadingFacts): Decided<JudgedReading> {
  const measure = measures.find(known => known === check.measure)
  if (measure === undefined || check.expected === null) return unreadable(check, typed)
  const read = readExpected(measure, check.expected, check.tolerance)
  if (!read.ok) throw new Error(`${check.check} was loaded with an expectation that cannot be read`)
  const reading = readMeasured(measure, typed)
  if (reading === undefined) return unreadable(check, typed)
  if (read.expected.kind === 'changeover' || reading.kind === 'contacts')
    return reading.kind === 'contacts'
      ? { ok: true, value: judgeContacts(reading) }
      : unreadable(check, typed)
  const limits = findLimits(read.expected, reading.conditions, facts)
  // No heater and no sensor is right when it is open, whatever it should read.
  if (reading.value === Number.POSITIVE_INFINITY && read.expected.kind !== 'limits')
    return { ok: true, value: { outcome: nameOutcome(check, ['open', 'high']), why: 'The circuit is open.' } }
  if (!limits.ok)
    return {
      ok: false,
      problem: { code: 'reading-needs-more', check: check.check, missing: limits.missing },
    }
  return { ok: true, value: judgeValue(check, { measure, value: reading.value, limits }) }
}

function unreadable(check: FaultCheck, typed: string): Decided<JudgedReading> {
  return {
    ok: false,
    problem: { code: 'reading-unreadable', check: check.check, typed, measure: check.measure },
  }
}

/** Figures a meter and a calculator round apart by no more than this are equal. */
const equalShare = 1e-9
/** Beyond so many times the upper limit the circuit counts as open: damp and dirt still conduct a little. Our choice. */
const openTimes = 20

function judgeValue(
  check: FaultCheck,
  {
    measure,
    value,
    limits,
  }: {
    readonly measure: Measure
    readonly value: number
    readonly limits: Extract<Limits, { ok: true }>
  },
): JudgedReading {
  const found = compare(value, limits)
  const isOpen = found === 'high' && value > limits.high * openTimes
  const unit = measureUnits[measure]
  const from = limits.from === null ? '' : `; ${limits.from}`
  return {
    outcome: nameOutcome(check, isOpen ? ['open', found] : [found]),
    why: `${wordFigure(value, unit)} is ${words[found]} ${wordLimits(limits, unit)}${from}.`,
  }
}

/** The first of these that the check knows, or that it is outside. */
function nameOutcome({ check, outcomes }: FaultCheck, found: readonly string[]): string {
  const named = [...found, 'outside'].find(outcome => outcomes.includes(outcome))
  if (named === undefined) throw new Error(`${check} measures, and has no outcome for ${found.join(', ')}`)
  return named
}

const words = { within: 'within', low: 'below', high: 'above' } as const

function compare(value: number, { low, high }: { readonly low: number; readonly high: number }) {
  if (value < low - Math.abs(low) * equalShare) return 'low'
  return value > high + Math.abs(high) * equalShare ? 'high' : 'within'
}

/** At rest the first contact is closed and the second open; actuated it is the other way round. */
function judgeContacts({ atRest, actuated }: Extract<MeasuredReading, { kind: 'contacts' }>): JudgedReading {
  const wrong = [
    atRest[0] ? '' : 'the contact that is closed at rest stays open at rest',
    atRest[1] ? 'the contact that is open at rest is closed at rest' : '',
    actuated[0] ? 'the contact that is closed at rest stays closed when actuated' : '',
    actuated[1] ? '' : 'the contact that is open at rest does not close when actuated',
  ].filter(fault => fault !== '')
  return wrong.length === 0
    ? { outcome: 'within', why: 'It changes over: closed and open at rest, open and closed when actuated.' }
    : { outcome: 'outside', why: `It does not change over: ${wrong.join('; ')}.` }
}
