import { describe, expect, test } from 'vitest'
import { readValue } from '../../../electron/catalogue/measured-values.ts'

/** Each alternative as its two ends, rounded past the last bits of the arithmetic. */
function endsOf(text: string, unit: string): [number, number][] | undefined {
  const value = readValue(text, unit)
  if (value?.kind !== 'numbers') return undefined
  return value.alternatives.map(({ low, high }) => [
    Number(low.toPrecision(12)),
    Number(high.toPrecision(12)),
  ])
}

describe('a number is read in the unit of its attribute', () => {
  const check = (text: string, unit: string, expected: [number, number][]) =>
    expect(endsOf(text, unit)).toEqual(expected)
  test.each<[string, string, [number, number][]]>([
    ['230', 'V', [[230, 230]]],
    [' 230 V ', 'V', [[230, 230]]],
    ['230v', 'V', [[230, 230]]],
    ['2.5', 'mm', [[2.5, 2.5]]],
    ['-18', '°C', [[-18, -18]]],
    ['+5', '°C', [[5, 5]]],
    ['12.75 mm', 'mm', [[12.75, 12.75]]],
    // An alternating supply is marked in the wake of the unit.
    ['230 V~', 'V', [[230, 230]]],
    ['230 V ~', 'V', [[230, 230]]],
    ['230 V∼', 'V', [[230, 230]]],
    ['230 V AC', 'V', [[230, 230]]],
    ['230 V  ac', 'V', [[230, 230]]],
    ['220-240', 'V', [[220, 240]]],
    ['220 - 240 V', 'V', [[220, 240]]],
    ['220–240 V', 'V', [[220, 240]]],
    ['220..240', 'V', [[220, 240]]],
    ['220 to 240 V', 'V', [[220, 240]]],
    ['-30-+40', '°C', [[-30, 40]]],
    [
      '115/230',
      'V',
      [
        [115, 115],
        [230, 230],
      ],
    ],
    [
      '100-120 / 220-240 V',
      'V',
      [
        [100, 120],
        [220, 240],
      ],
    ],
    [
      '50|60',
      'Hz',
      [
        [50, 50],
        [60, 60],
      ],
    ],
    ['1-2 kW', 'W', [[1000, 2000]]],
    ['4', 'pins', [[4, 4]]],
    ['1400 rpm', 'rpm', [[1400, 1400]]],
    ['4 Pins', 'pins', [[4, 4]]],
    ['2.2', 'ohm', [[2.2, 2.2]]],
    ['2 Ohms', 'ohm', [[2, 2]]],
    ['4 Ω', 'ohm', [[4, 4]]],
  ])('%s in %s', check)
})

// SI prefixes: BIPM, The International System of Units (SI Brochure), 9th edition, table 7; powers from memory.
describe('a prefix is a power of ten, and m is not M', () => {
  const check = (text: string, unit: string, expected: number) =>
    expect(endsOf(text, unit)).toEqual([[expected, expected]])
  test.each([
    ['12000 nF', 'µF', 12],
    ['12000000 pF', 'µF', 12],
    ['12 µF', 'nF', 12000],
    ['12 uF', 'nF', 12000],
    ['12 μF', 'nF', 12000],
    ['3 mF', 'µF', 3000],
    ['2.2 kohm', 'ohm', 2200],
    ['2.2 kOhms', 'ohm', 2200],
    ['2 kW', 'W', 2000],
    ['2.1 kV', 'V', 2100],
    ['1.5 MW', 'kW', 1500],
    ['5 mW', 'W', 0.005],
    ['16 A', 'mA', 16000],
    ['50 kHz', 'Hz', 50000],
    ['1 m', 'mm', 1000],
    ['60 MM', 'mm', 60],
    ['5 KG', 'kg', 5],
    ['1500 mbar', 'bar', 1.5],
    ['2 kPa', 'Pa', 2000],
    ['250 ml', 'l', 0.25],
    ['0.5 kg', 'g', 500],
  ])('%s is so many %s: %d', check)
})

describe('what does not measure the attribute is not read', () => {
  const check = (text: string, unit: string) => expect(readValue(text, unit)).toBeUndefined()
  test.each([
    ['', 'V'],
    ['  ', 'V'],
    ['', ''],
    ['  ', 'text'],
    ['about 230', 'V'],
    ['230 W', 'V'],
    ['230 xV', 'V'],
    ['240-220', 'V'],
    ['220-', 'V'],
    ['115/', 'V'],
    ['115/?', 'V'],
    ['230 ~ V', 'V'],
    ['230 ~V', 'V'],
    ['230 AC V', 'V'],
    ['4 pins', 'tabs'],
    ['ohms of 4', 'ohm'],
    ['4 ohmsx', 'ohm'],
    ['4 ohmsx', 'ohmx'],
    ['2.', 'mm'],
    ['1.2.3', 'mm'],
    ['12 V', 'mV x'],
  ])('%s in %s', check)
})

describe('words compare without case and spaces, and are never numbers', () => {
  const check = (text: string, unit: string, words: string) =>
    expect(readValue(text, unit)).toEqual({ kind: 'words', words })
  test.each([
    ['G 3/4', '', 'G3/4'],
    [' g  3/4 ', 'text', 'G3/4'],
    ['3/4 GHT', 'TEXT', '3/4GHT'],
    ['230', '', '230'],
    // Full-width figures, as typed on some keyboards (Unicode normalisation form NFKC).
    ['４ pins', 'text', '4PINS'],
  ])('%s in %s', check)
})

test('full-width figures are figures', () => expect(endsOf('２３０', 'V')).toEqual([[230, 230]]))
