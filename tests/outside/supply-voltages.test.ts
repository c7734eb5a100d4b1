import { describe, expect, test } from 'vitest'
import { type AttributeRule, compareAttribute } from '../../electron/fit-check/compare-attributes.ts'

/**
 * Nominal supply voltages of IEC 60038:2009, table 1 (230/400 V and 120/240 V at the frequencies named there) and its
 * ±10 % supply terminal range; from memory. A rating is compared as printed: the tolerance of the supply is never
 * used to stretch it, so 253 V, which the standard allows at the terminals, is not covered by a part for 230 V.
 */
const rules: Record<string, AttributeRule> = {
  volts: { attribute: 'volts', unit: 'V', rule: 'covers', tolerance: null },
  hertz: { attribute: 'hertz', unit: 'Hz', rule: 'covers', tolerance: null },
}

describe('supply of the appliance against the rating of the part', () => {
  const check = (reading: 'volts' | 'hertz', part: string, appliance: string, expected: string) => {
    const rule = rules[reading]
    if (rule === undefined) throw new Error(`no rule for ${reading}`)
    expect(compareAttribute(rule, { part, appliance })).toBe(expected)
  }
  test.each<['volts' | 'hertz', string, string, string]>([
    ['volts', '230', '230', 'agrees'],
    ['volts', '230', '230 V~', 'agrees'],
    // 220 V and 240 V are the former nominal values that 230 V replaced; plates print them as a range.
    ['volts', '220-240', '230', 'agrees'],
    ['volts', '230', '220-240', 'disagrees'],
    ['volts', '230', '253', 'disagrees'],
    ['volts', '230', '207', 'disagrees'],
    ['volts', '230', '120', 'disagrees'],
    ['volts', '100-240', '120', 'agrees'],
    ['volts', '230', '400', 'disagrees'],
    ['hertz', '50', '50', 'agrees'],
    ['hertz', '50', '60', 'disagrees'],
    ['hertz', '50/60', '60', 'agrees'],
    ['hertz', '50-60', '50', 'agrees'],
  ])('%s: part %s, appliance %s: %s', check)
})
