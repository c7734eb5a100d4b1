import { describe, expect, test } from 'vitest'
import { type AttributeRule, compareAttribute } from '../../../electron/fit-check/compare-attributes.ts'

const check = (
  rule: Partial<AttributeRule>,
  part: string | undefined,
  appliance: string | undefined,
  expected: string,
) => {
  const whole = { attribute: 'any', unit: 'V', rule: 'equal', tolerance: null, ...rule } as const
  expect(compareAttribute(whole, { part, appliance })).toBe(expected)
}

describe('the part and the appliance are compared by the rule of their family, in its unit', () => {
  test.each<[Partial<AttributeRule>, string | undefined, string | undefined, string]>([
    [{ rule: 'equal' }, '230', '230', 'agrees'],
    [{ rule: 'equal' }, '230', '230 V', 'agrees'],
    [{ rule: 'equal' }, '230', '230v', 'agrees'],
    [{ unit: 'Hz' }, '50', '50 hz', 'agrees'],
    [{ rule: 'equal' }, '230', '120', 'disagrees'],
    [{ rule: 'equal' }, '220-240', '220..240', 'agrees'],
    [{ rule: 'equal' }, '230', '220-240', 'disagrees'],
    [{ rule: 'equal' }, '230', '115/230', 'unknown'],
    [{ rule: 'equal' }, '115/230', '230', 'agrees'],
    [{ rule: 'equal' }, '115/230', '115/230', 'agrees'],
    [{ rule: 'covers' }, '220..240', '230', 'agrees'],
    [{ rule: 'covers' }, '220..240', '220-240', 'agrees'],
    [{ rule: 'covers' }, '220..230', '220-240', 'disagrees'],
    [{ rule: 'covers' }, '220..240', '120', 'disagrees'],
    [{ rule: 'covers', unit: 'Hz' }, '50..60', '50/60', 'agrees'],
    [{ rule: 'covers', unit: 'Hz' }, '50', '50/60', 'unknown'],
    [{ rule: 'within', unit: 'µF', tolerance: 0.05 }, '12.6', '12', 'agrees'],
    [{ rule: 'within', unit: 'µF', tolerance: 0.05 }, '12.61', '12', 'disagrees'],
    [{ rule: 'within', unit: 'µF', tolerance: 0.05 }, '12000 nF', '12', 'agrees'],
    [{ rule: 'within', unit: 'uF', tolerance: 0.05 }, '12 µF', '11.9', 'agrees'],
    [{ rule: 'at-least' }, '450', '400', 'agrees'],
    [{ rule: 'at-least' }, '400', '450', 'disagrees'],
    [{ rule: 'at-least' }, '400', '400', 'agrees'],
    [{ rule: 'at-most', unit: 'mm' }, '60', '62', 'agrees'],
    [{ rule: 'at-most', unit: 'mm' }, '63', '62', 'disagrees'],
    [{ unit: 'ohm' }, '2.2 kohm', '2200', 'agrees'],
    [{ unit: '' }, 'G 3/4', 'g3/4', 'agrees'],
    [{ unit: 'text' }, 'left', 'right', 'disagrees'],
    [{ unit: 'pins' }, '4', '4 pins', 'agrees'],
    [{}, undefined, '230', 'unknown'],
    [{}, '230', undefined, 'unknown'],
    [{}, '230', 'about 230', 'unknown'],
    [{ unit: 'mm' }, '230 V', '230', 'unknown'],
  ])('%j: part %s, appliance %s: %s', check)
})
