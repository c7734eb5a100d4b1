import { describe, expect, test } from 'vitest'
import { type AttributeOffer, classifyAttribute } from '../../../electron/fit-check/classify-attribute.ts'
import type { AttributeRule } from '../../../electron/fit-check/compare-attributes.ts'

const offer = (offered: string, rule: Partial<AttributeRule> = {}): AttributeOffer => ({
  rule: { attribute: 'any', unit: 'V', rule: 'equal', tolerance: null, ...rule },
  offered,
})
/** Each way as what would do, what a person reads, and whether the appliance states it. */
const check = (
  offers: AttributeOffer[],
  stated: string | undefined,
  expected: [string[], string, boolean][],
) =>
  expect(
    classifyAttribute(offers, stated).map(({ suits, words, isStated }) => [[...suits], words, isStated]),
  ).toEqual(expected)

describe('what is stated settles which of the offered values would do', () => {
  test.each<[string, AttributeOffer[], string, [string[], string, boolean][]]>([
    ['one of two', [offer('230'), offer('120')], '230', [[['230'], '230 V', true]]],
    ['none', [offer('230'), offer('120')], '400', [[[], 'any other', true]]],
    [
      'two at once',
      [offer('220-240', { rule: 'covers' }), offer('110-240', { rule: 'covers' })],
      '230',
      [[['220-240', '110-240'], 'within 220-240 V and within 110-240 V', true]],
    ],
    ['a value offered twice counts once', [offer('230'), offer('230')], '230', [[['230'], '230 V', true]]],
  ])('%s', (_title, offers, stated, expected) => check(offers, stated, expected))
})

describe('what is not stated leaves a way for each offered value, and none of them', () => {
  test.each<[string, AttributeOffer[], string | undefined, [string[], string, boolean][]]>([
    [
      'nothing stated',
      [offer('230'), offer('120')],
      undefined,
      [
        [['230'], '230 V', false],
        [['120'], '120 V', false],
        [[], 'any other', false],
      ],
    ],
    [
      'a value that cannot be read',
      [offer('230')],
      'worn off',
      [
        [['230'], '230 V', false],
        [[], 'any other', false],
      ],
    ],
    [
      'one of two values states nothing of the third',
      [offer('115'), offer('230'), offer('400')],
      '115/230',
      [
        [['115'], '115 V', false],
        [['230'], '230 V', false],
        [[], 'any other', false],
      ],
    ],
    [
      'one value that is sure beside one that is not',
      [offer('110-240', { rule: 'covers' }), offer('230', { rule: 'covers' })],
      '115/230',
      [
        [['110-240'], 'within 110-240 V', false],
        [['110-240', '230'], 'within 110-240 V and within 230 V', false],
      ],
    ],
    ['offers of nothing', [], undefined, [[[], 'any other', false]]],
  ])('%s', (_title, offers, stated, expected) => check(offers, stated, expected))
})

describe('a way is named by what a person would read', () => {
  test.each<[string, Partial<AttributeRule>, string]>([
    ['16', { unit: 'A', rule: 'at-least' }, 'at most 16 A'],
    ['16', { unit: 'A', rule: 'at-most' }, 'at least 16 A'],
    ['16', { unit: 'A', rule: 'covers' }, 'within 16 A'],
    ['16', { unit: 'µF', rule: 'within', tolerance: 0.05 }, '16 µF within 5 %'],
    ['16', { unit: 'µF', rule: 'within', tolerance: 0.025 }, '16 µF within 2.5 %'],
    ['16', { unit: 'µF', rule: 'within', tolerance: null }, '16 µF within 0 %'],
    ['left', { unit: 'text' }, 'left'],
    ['left', { unit: '' }, 'left'],
    ['16', { unit: 'A' }, '16 A'],
  ])('%s by %j: %s', (offered, rule, words) =>
    expect(classifyAttribute([offer(offered, rule)], undefined)[0]?.words).toBe(words),
  )
})
