import { describe, expect, test } from 'vitest'
import type { Measure } from '../../../../electron/catalogue/expected-reading.ts'
import { readMeasured } from '../../../../electron/fault-guide/readings/read-measured.ts'

describe('a figure is read in the unit of what is measured', () => {
  const check = (measure: Measure, typed: string, value: number) => {
    const read = readMeasured(measure, typed)
    expect(read).toMatchObject({ kind: 'value' })
    if (read?.kind === 'value')
      if (Number.isFinite(value)) expect(read.value).toBeCloseTo(value, 6)
      else expect(read.value).toBe(value)
  }
  test.each<[Measure, string, number]>([
    ['resistance', '26.4', 26.4],
    ['resistance', '26,4 Ω', 26.4],
    ['resistance', '4.7 kΩ', 4700],
    ['resistance', '4.7k', 4700],
    ['resistance', '0.47 Mohm', 470_000],
    ['resistance', 'OL', Number.POSITIVE_INFINITY],
    ['resistance', 'open', Number.POSITIVE_INFINITY],
    // IEC 60062, the letter in the place of the point; its own examples, from memory.
    ['resistance', '2k2', 2200],
    ['resistance', '4R7', 4.7],
    ['resistance', '1M5', 1_500_000],
    ['voltage', '230 V', 230],
    ['voltage', '2 mV', 0.002],
    ['current', '300 mA', 0.3],
    ['power', '2 kW', 2000],
    ['capacitance', '12 uF', 12],
    ['capacitance', '12000 nF', 12],
    ['capacitance', '12 MFD', 12],
    ['pressure', '250 kPa', 2.5],
    ['pressure', '0.25 MPa', 2.5],
    ['pressure', '800 mbar', 0.8],
    // 1 psi is 6.894757 kPa: NIST Special Publication 811, appendix B.8, from memory.
    ['pressure', '14.503774 psi', 1],
    ['temperature', '60', 60],
    ['temperature', '60 C', 60],
    ['temperature', '-18 °C', -18],
    // Water boils at 212 °F and freezes at 32 °F.
    ['temperature', '212 F', 100],
    ['temperature', '32 °F', 0],
    ['height', '0.8 m', 80],
    ['height', '800 mm', 80],
    ['flow', '8 l/min', 8],
    ['flow', '500 ml', 0.5],
    ['pulses', '220', 220],
    ['pulses', '220 pulses per litre', 220],
    ['time', '45 sec', 45],
  ])('%s %s is %d', check)
})

test('what it was taken at is read with it', () => {
  expect(readMeasured('resistance', '12.1 kΩ at 20 °C')).toEqual({
    kind: 'value',
    value: 12_100,
    conditions: { celsius: 20, watts: null },
  })
  expect(readMeasured('resistance', '26.4 for 2000 W')).toMatchObject({
    value: 26.4,
    conditions: { celsius: null, watts: 2000 },
  })
})

test('the contacts of a changeover switch are read as words or as a meter shows them', () => {
  const good = { kind: 'contacts', atRest: [true, false], actuated: [false, true] }
  expect(readMeasured('changeover', 'closed open / open closed')).toEqual(good)
  expect(readMeasured('changeover', '0.3 OL / OL 0.2 Ω')).toEqual(good)
  expect(readMeasured('changeover', '0.3 OL/0.3 OL')).toMatchObject({ actuated: [true, false] })
})

describe('what cannot be one figure of it is not read', () => {
  test.each<[Measure, string]>([
    ['resistance', ''],
    ['resistance', 'fine'],
    ['resistance', '-4 Ω'],
    ['resistance', '230 V'],
    ['resistance', '20-30 Ω'],
    ['resistance', '1,200 Ω'],
    ['resistance', '1.200,5 Ω'],
    ['resistance', '12 k at warm'],
    ['voltage', 'OL'],
    ['pressure', '2 kΩ'],
    ['changeover', 'closed open'],
    ['changeover', 'closed open / open perhaps'],
    ['changeover', 'closed open / open closed / closed open'],
  ])('%s “%s”', (measure, typed) => expect(readMeasured(measure, typed)).toBeUndefined())
})
