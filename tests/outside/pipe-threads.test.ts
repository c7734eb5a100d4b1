import { describe, expect, test } from 'vitest'
import { compareAttribute } from '../../electron/fit-check/compare-attributes.ts'

/**
 * Threads are words, not numbers: two agree when they are the same designation. The sizes below show why likeness in
 * the name is not enough. ISO 228-1:2000, table 1: threads per inch and major diameter of G threads (from memory,
 * cross-checked by the Whitworth form: height 0.640327 P, so minor = major − 2 h). Garden-hose thread of
 * ASME B1.20.7: 3/4-11.5 NH, major diameter 1.0625 in (from memory).
 */
const gThreads = [
  { name: 'G 3/8', threadsPerInch: 19, major: 16.662, minor: 14.95 },
  { name: 'G 1/2', threadsPerInch: 14, major: 20.955, minor: 18.631 },
  { name: 'G 3/4', threadsPerInch: 14, major: 26.441, minor: 24.117 },
  { name: 'G 1', threadsPerInch: 11, major: 33.249, minor: 30.291 },
]
const gardenHose = { name: '3/4-11.5 NH', threadsPerInch: 11.5, major: 1.0625 * 25.4 }

const rule = { attribute: 'thread', unit: '', rule: 'equal', tolerance: null } as const
const diameter = { attribute: 'major diameter', unit: 'mm', rule: 'within', tolerance: 0.005 } as const

test.each(gThreads)('$name: the table agrees with the Whitworth form', ({ threadsPerInch, major, minor }) => {
  const pitch = 25.4 / threadsPerInch
  expect(major - 2 * 0.640327 * pitch).toBeCloseTo(minor, 2)
})

describe('a thread agrees with itself alone, however it is spaced', () => {
  const check = (part: string, appliance: string, expected: string) =>
    expect(compareAttribute(rule, { part, appliance })).toBe(expected)
  test.each<[string, string, string]>([
    ...gThreads.map(({ name }): [string, string, string] => [
      name,
      name.replace(' ', '').toLowerCase(),
      'agrees',
    ]),
    ['G 3/4', 'G 1/2', 'disagrees'],
    ['G 3/4', 'G 3/8', 'disagrees'],
    ['G 3/4', gardenHose.name, 'disagrees'],
    ['G 3/4', '3/4', 'disagrees'],
  ])('%s with %s: %s', check)
})

test('by its diameter too, a 3/4 hose thread is no G 3/4', () => {
  const g = gThreads.find(({ name }) => name === 'G 3/4')
  expect(compareAttribute(diameter, { part: `${g?.major}`, appliance: `${gardenHose.major}` })).toBe(
    'disagrees',
  )
  expect(g?.threadsPerInch).not.toBe(gardenHose.threadsPerInch)
})
