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
    ['A1500', '1000', null, undefined],
    ['A1500', null, '1999', undefined],
    // A range whose own ends are not of one form.
    ['1500', 'A1000', '1999', undefined],
    ['1500', '1000', 'A1999', undefined],
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
      [one, { from: 'A100', to: 'A199' }],
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

describe('each class of an unknown serial is shown by a serial of it', () => {
  const check = (ranges: SerialRange[], expected: [string | null, string][]) =>
    expect(
      classifySerials(ranges).map(({ example, inRange }) => [example, inRange.map(Number).join('')]),
    ).toEqual(expected)
  test.each<[string, SerialRange[], [string | null, string][]]>([
    ['no range', [], [[null, '']]],
    [
      'an end that stands in one of two',
      [
        { from: '4000', to: '4999' },
        { from: '4000', to: null },
      ],
      [
        ['4000', '11'],
        ['5000', '01'],
        [null, '00'],
      ],
    ],
    [
      'an open beginning',
      [
        { from: null, to: '4999' },
        { from: null, to: '3999' },
      ],
      [
        ['3999', '11'],
        ['4000', '10'],
        [null, '00'],
      ],
    ],
    [
      'before the first end',
      [
        { from: '4000', to: null },
        { from: null, to: '4999' },
      ],
      [
        ['3999', '01'],
        ['4000', '11'],
        ['5000', '10'],
        [null, '00'],
      ],
    ],
    [
      'leading zeros stay',
      [
        { from: '0010', to: '0099' },
        { from: null, to: null },
      ],
      [
        ['0009', '01'],
        ['0010', '11'],
        [null, '00'],
      ],
    ],
    [
      'nought is before one',
      [
        { from: '1', to: null },
        { from: null, to: '9' },
      ],
      [
        ['0', '01'],
        ['1', '11'],
        ['10', '10'],
        [null, '00'],
      ],
    ],
    [
      'nothing is before nought',
      [
        { from: '0', to: '0' },
        { from: '1', to: '1' },
      ],
      [
        ['0', '10'],
        ['1', '01'],
        [null, '00'],
      ],
    ],
    [
      'nothing is below zero',
      [{ from: '0', to: null }],
      [
        ['0', '1'],
        [null, '0'],
      ],
    ],
    [
      'letters have no neighbours',
      [
        { from: 'A100', to: 'A199' },
        { from: 'A150', to: null },
      ],
      [
        ['A100', '10'],
        ['A150', '11'],
        [null, '00'],
      ],
    ],
    [
      'marks in a serial are no part of it',
      [
        { from: '40-00', to: null },
        { from: null, to: '50 00' },
      ],
      [
        ['3999', '01'],
        ['40-00', '11'],
        ['5001', '10'],
        [null, '00'],
      ],
    ],
  ])('%s', (_title, ranges, expected) => check(ranges, expected))
})
