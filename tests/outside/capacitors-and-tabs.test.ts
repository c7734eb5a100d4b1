import { describe, expect, test } from 'vitest'
import { type AttributeRule, compareAttribute } from '../../electron/fit-check/compare-attributes.ts'

const check = (rule: Omit<AttributeRule, 'attribute'>, part: string, appliance: string, expected: string) =>
  expect(compareAttribute({ attribute: 'any', ...rule }, { part, appliance })).toBe(expected)

/**
 * Motor run capacitors: IEC 60252-1:2010+A1:2013 (from memory). Tolerance on capacitance is marked, commonly ±5 % or
 * ±10 %; classes of safety protection S0 to S3 rise with the protection against failure, and replaced the P classes
 * of the 2001 edition, with which they are not interchangeable by name. That a replacement has the marked capacitance
 * and neither a lower voltage nor a lower class is *common practice*.
 */
describe('a run capacitor', () => {
  const capacitance = { unit: 'µF', rule: 'within', tolerance: 0.05 } as const
  const voltage = { unit: 'V', rule: 'at-least', tolerance: null } as const
  const safetyClass = { unit: '', rule: 'at-least', tolerance: null } as const
  test.each<[string, Omit<AttributeRule, 'attribute'>, string, string, string]>([
    ['of the marked capacitance', capacitance, '16', '16', 'agrees'],
    ['at the edge of 5 %', capacitance, '16.8', '16', 'agrees'],
    ['beyond 5 %', capacitance, '17', '16', 'disagrees'],
    ['of the next value of the E12 series', capacitance, '18', '16', 'disagrees'],
    ['of a higher voltage', voltage, '450', '400', 'agrees'],
    ['of a lower voltage', voltage, '400', '450', 'disagrees'],
    ['of the same class', safetyClass, 'S2', 'S2', 'agrees'],
    ['of a higher class', safetyClass, 'S3', 'S2', 'agrees'],
    ['of a lower class', safetyClass, 'S0', 'S2', 'disagrees'],
    ['of the older series', safetyClass, 'P2', 'S2', 'unknown'],
  ])('%s', (_, rule, part, appliance, expected) => check(rule, part, appliance, expected))
})

/**
 * Flat quick-connect terminations: IEC 61210:2010, nominal tab widths 2.8, 4.8, 6.3 and 9.5 mm (from memory). A
 * receptacle of one width does not hold on a tab of another, so widths must be equal; nearness is not enough.
 */
describe('a push-on tab', () => {
  const widths = ['2.8', '4.8', '6.3', '9.5']
  test.each(widths.flatMap(part => widths.map(appliance => [part, appliance] as const)))(
    'of %s mm on %s mm',
    (part, appliance) => {
      const expected = part === appliance ? 'agrees' : 'disagrees'
      check({ unit: 'mm', rule: 'equal', tolerance: null }, part, appliance, expected)
      check({ unit: '', rule: 'equal', tolerance: null }, `${part} mm tab`, `${appliance} mm tab`, expected)
    },
  )
})

/** Handed and directional parts: *common practice*. A left hinge is never turned into a right one by likeness. */
describe('a handed part', () => {
  const equal = { unit: 'text', rule: 'equal', tolerance: null } as const
  test.each([
    ['left', 'left', 'agrees'],
    ['left', 'right', 'disagrees'],
    ['with the arrow', 'against the arrow', 'disagrees'],
  ])('%s for %s', (part, appliance, expected) => check(equal, part, appliance, expected))
})
