import { describe, expect, test } from 'vitest'
import {
  classifySerials,
  isInSerialRange,
  type SerialRange,
} from '../../../electron/fit-check/serial-ranges.ts'

describe('a serial lies in a range only where the two have an order', () => {
  const check = (serial: string, from: string | null, to: string | null, expected: boolean | undefined) =>
    expect(isInSerialRange(serial, { from, to })).toBe(expected)
  test.each([
    ['4000', '4000', '4999', true],
    ['4999', '4000', '4999', true],
    ['5000', '4000', '4999', false],
    ['0004500', '4000', '4999', true],
    ['400 12-3', '400000', null, true],
    ['90071992547409931', '90071992547409932', null, false],
    ['A1500', 'A1000', 'A1999', true],
    ['a1500', 'A1000', 'A1999', true],
    ['B1500', 'A1000', 'A1999', false],
    ['A15000', 'A1000', 'A1999', undefined],
    ['A1500', '1000', '1999', undefined],
    ['anything', null, null, true],
  ])('%s in %s to %s', check)
})

describe('the classes of an unknown serial are every way it may stand to the ranges', () => {
  const check = (ranges: SerialRange[], expected: boolean[][]) => {
    const found = classifySerials(ranges).map(({ inRange }) => inRange)
    expect(found).toHaveLength(expected.length)
    expect(found).toEqual(expect.arrayContaining(expected))
  }
  const one = { from: '4000', to: '4999' }
  const next = { from: '5000', to: null }
  const wide = { from: '4500', to: '5500' }
  test.each([
    [[], [[]]],
    [[one], [[true], [false]]],
    [
      [one, next],
      [
        [true, false],
        [false, true],
        [false, false],
      ],
    ],
    [
      [one, wide],
      [
        [true, false],
        [true, true],
        [false, true],
        [false, false],
      ],
    ],
  ])('%j', check)
})
