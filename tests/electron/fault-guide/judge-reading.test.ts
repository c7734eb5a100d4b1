import { describe, expect, test } from 'vitest'
import { judgeReading } from '../../../electron/fault-guide/judge-reading.ts'
import type { ReadingFacts } from '../../../electron/fault-guide/readings/find-limits.ts'
import type { FaultCheck } from '../../../shared-schemas/fault-guide.ts'

const nothingKnown: ReadingFacts = { volts: null, watts: null }

function checkOf(given: Partial<FaultCheck>): FaultCheck {
  const outcomes = given.outcomes ?? ['within', 'low', 'high', 'open']
  return {
    check: 'heater',
    how: 'Measure',
    measure: 'resistance',
    unit: 'Ω',
    expected: 'heater',
    tolerance: '10 %',
    minutes: 5,
    tools: [],
    hazards: [],
    competence: 'repairer',
    source: null,
    otherwise: outcomes.map(() => 1 / outcomes.length),
    byCause: [],
    ...given,
    outcomes,
  }
}

/** The outcome, and the figures that must stand in its reason. */
function judge(given: Partial<FaultCheck>, typed: string, facts: ReadingFacts = nothingKnown) {
  const judged = judgeReading(checkOf(given), typed, facts)
  return judged.ok ? judged.value : judged.problem
}

describe('a heater is judged by its power and voltage', () => {
  const facts = { volts: '230', watts: '2200', heaterWatts: '2000' }
  test.each([
    ['26.4 Ω', 'within'],
    ['23.9', 'within'],
    ['23.7', 'low'],
    ['29.2', 'high'],
    ['OL', 'open'],
    ['12 MΩ', 'open'],
    ['0.4 Ω', 'low'],
  ])('%s is %s', (typed, outcome) => expect(judge({}, typed, facts)).toMatchObject({ outcome }))

  test('and the reason opens the figures', () =>
    expect(judge({}, '26.4 Ω', facts)).toEqual({
      outcome: 'within',
      why: '26.4 Ω is within 23.8 Ω to 29.1 Ω; R = U²/P with 230 V and 2000 W.',
    }))

  test('by the watts that stand on it, where they are typed', () =>
    expect(judge({}, '52 for 1000 W', facts)).toMatchObject({ outcome: 'within' }))

  test('by any of the watts that the catalogue leaves open', () => {
    const several = { volts: '230', watts: null, heaterWatts: '1800..2000 W' }
    // 26.45 Ω at 2000 W and 29.39 Ω at 1800 W, each within a tenth.
    expect(judge({}, '23.9', several)).toMatchObject({ outcome: 'within' })
    expect(judge({}, '32.3', several)).toMatchObject({ outcome: 'within' })
    expect(judge({}, '32.4', several)).toMatchObject({ outcome: 'high' })
  })

  test('by the plate, with room for the motor, where nothing else is known', () => {
    const plate = { volts: '220-240', watts: '2000-2400' }
    // 24 Ω by the plate; a heater of three quarters of it has 32.3 Ω, and a tenth more 35.5 Ω.
    expect(judge({}, '35 Ω', plate)).toMatchObject({ outcome: 'within' })
    expect(judge({}, '36 Ω', plate)).toMatchObject({ outcome: 'high' })
  })

  test('and is open whatever it should read', () => {
    expect(judge({}, 'OL')).toEqual({ outcome: 'open', why: 'The circuit is open.' })
    expect(judge({ outcomes: ['within', 'outside'] }, 'OL')).toMatchObject({ outcome: 'outside' })
  })

  test('and what is missing is asked for', () => {
    expect(judge({}, '26 Ω', { volts: null, watts: '2000' })).toMatchObject({ missing: 'volts' })
    expect(judge({}, '26 Ω', { volts: '115/230', watts: '2000' })).toMatchObject({ missing: 'volts' })
    expect(judge({}, '26 Ω', { volts: '230', watts: null })).toMatchObject({ missing: 'heater-watts' })
  })
})

describe('a thermistor is judged at its temperature', () => {
  const ntc = { expected: 'ntc 10 kΩ at 25 °C, beta 3435 K', tolerance: '10 %' }
  test.each([
    // The printed table of the common 10 kΩ curve, from memory: 12.09 kΩ at 20 °C, 4.160 kΩ at 50 °C.
    ['12.09 kΩ at 20 °C', 'within'],
    ['4.16 k at 50', 'within'],
    ['12.09 kΩ at 50 °C', 'high'],
    ['4.16 kΩ at 20 °C', 'low'],
    ['OL at 20', 'open'],
  ])('%s is %s', (typed, outcome) => expect(judge(ntc, typed)).toMatchObject({ outcome }))

  test('the catalogue’s own figure of the model goes before the guide’s', () =>
    expect(judge(ntc, '6 kΩ at 20 °C', { ...nothingKnown, ohmsAt25: '4800' })).toMatchObject({
      outcome: 'within',
    }))

  test('without its temperature, or without any figure of it, nothing is judged', () => {
    expect(judge(ntc, '12 kΩ')).toMatchObject({ code: 'reading-needs-more', missing: 'temperature' })
    expect(judge({ ...ntc, expected: 'ntc beta 3977 K' }, '12 kΩ at 20 °C')).toMatchObject({
      missing: 'ohms-at-25',
    })
  })
})

/** The E24 series of IEC 60063, from memory. */
const e24 = [
  1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8,
  7.5, 8.2, 9.1,
]

test('a resistor of the E24 series is within five in a hundred of its value, and its neighbours are not', () => {
  for (const [at, value] of e24.entries()) {
    const resistor = { expected: `${value} kΩ`, tolerance: '5 %' }
    expect(judge(resistor, `${value} kΩ`)).toMatchObject({ outcome: 'within' })
    expect(judge(resistor, `${e24[at + 1] ?? 10} kΩ`), `${value}`).toMatchObject({ outcome: 'high' })
    expect(judge(resistor, `${e24[at - 1] ?? 0.91} kΩ`), `${value}`).toMatchObject({ outcome: 'low' })
  }
})

/** IEC 60751, Pt100, class B: 100.00 ± 0.12 Ω at 0 °C, 138.51 ± 0.30 Ω at 100 °C; from memory. */
test.each([
  ['100 Ω', '0.12 Ω', '100.12', 'within'],
  ['100 Ω', '0.12 Ω', '100.13', 'high'],
  ['138.51 Ω', '0.3 Ω', '138.21', 'within'],
  ['138.51 Ω', '0.3 Ω', '138.2', 'low'],
])('a platinum sensor of %s ± %s that reads %s is %s', (expected, tolerance, typed, outcome) =>
  expect(judge({ expected, tolerance }, typed)).toMatchObject({ outcome }),
)

describe('limits that the guide states', () => {
  const three = ['within', 'low', 'high']
  test.each<[Partial<FaultCheck>, string, string]>([
    [{ measure: 'pressure', expected: '0.3..10 bar', outcomes: three }, '30 kPa', 'within'],
    [{ measure: 'pressure', expected: '0.3..10 bar', outcomes: three }, '0.29 bar', 'low'],
    [{ measure: 'height', expected: '60..100 cm', outcomes: three }, '1.2 m', 'high'],
    [{ measure: 'pulses', expected: '210..230 pulses', outcomes: ['within', 'outside'] }, '110', 'outside'],
    [{ expected: 'at least 1 MΩ', outcomes: ['within', 'outside'] }, 'OL', 'within'],
    [{ expected: 'at least 1 MΩ', outcomes: ['within', 'outside'] }, '200 kΩ', 'outside'],
    [{ expected: 'at most 1 Ω', outcomes: ['within', 'outside'] }, '0.2', 'within'],
    [{ expected: 'at most 1 Ω', outcomes: ['within', 'outside'] }, 'open', 'outside'],
    [{ measure: 'capacitance', expected: '12 µF', tolerance: '10 %', outcomes: three }, '9 µF', 'low'],
    [{ measure: 'temperature', expected: '-22..-16 °C', outcomes: three }, '-5', 'high'],
  ])('%o: %s is %s', (given, typed, outcome) =>
    expect(judge({ tolerance: null, ...given }, typed)).toMatchObject({ outcome }),
  )
})

describe('a changeover switch', () => {
  const changeover = {
    measure: 'changeover',
    expected: 'changes over',
    tolerance: null,
    outcomes: ['within', 'outside'],
  }
  test.each([
    ['closed open / open closed', 'within', /changes over/],
    ['closed open / closed open', 'outside', /stays closed when actuated; .* does not close/],
    ['open closed / open closed', 'outside', /stays open at rest; .* is closed at rest/],
    ['closed open / open open', 'outside', /does not close when actuated/],
  ])('%s is %s', (typed, outcome, why) =>
    expect(judge(changeover, typed)).toMatchObject({ outcome, why: expect.stringMatching(why) }),
  )
})

test('what cannot be read is refused with the name of what is measured', () => {
  expect(judge({}, 'warm', { volts: '230', watts: '2000' })).toEqual({
    code: 'reading-unreadable',
    check: 'heater',
    typed: 'warm',
    measure: 'resistance',
  })
  expect(judge({ measure: null, expected: null }, '3')).toMatchObject({ measure: null })
})
