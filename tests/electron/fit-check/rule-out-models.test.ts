import { describe, expect, test } from 'vitest'
import { daysOf } from '../../../electron/fit-check/made-dates.ts'
import { attributeKey } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { contradicts, ruleOutModels } from '../../../electron/fit-check/rule-out-models.ts'
import type { PlateReadings } from '../../../shared-schemas/plate-reading.ts'
import { aDossier, aFamily, aModel, familyIdOf } from '../../builders/fit-dossier.ts'

describe('a reading rules out the models that it contradicts, unless it contradicts them all', () => {
  const early = aModel('EARLY', { made: { to: '2012' }, volts: '220-240', hertz: '50' })
  const late = aModel('LATE', { made: { from: '2013' }, volts: '120', hertz: '60' })
  const unknown = aModel('UNKNOWN')
  const check = (plate: PlateReadings, expected: string[]) => {
    const left = ruleOutModels(aDossier({}), [early, late, unknown], asReadings(plate))
    expect(left.map(({ key }) => key)).toEqual(expected)
  }
  test.each<[PlateReadings, string[]]>([
    [{}, ['EARLY', 'LATE', 'UNKNOWN']],
    [{ made: '2011-05' }, ['EARLY', 'UNKNOWN']],
    [{ volts: '230' }, ['EARLY', 'UNKNOWN']],
    [{ volts: '115/120' }, ['LATE', 'UNKNOWN']],
    [{ hertz: '60', made: '2011' }, ['UNKNOWN']],
    [{ hertz: '60', made: '2014' }, ['LATE', 'UNKNOWN']],
    [{ volts: 'illegible' }, ['EARLY', 'LATE', 'UNKNOWN']],
  ])('%j leaves %j', check)

  test('one model that is contradicted stays, for its number is what is doubtful', () => {
    expect(ruleOutModels(aDossier({}), [late], asReadings({ made: '2010', volts: '230' }))).toEqual([late])
  })
})

describe('what the catalogue states of a model for an attribute of the family may rule it out', () => {
  const attributes = [
    { attribute: 'pins', unit: 'pins', rule: 'equal', tolerance: null },
    { attribute: 'hinge', unit: 'text', rule: 'equal', tolerance: null },
  ] as const
  const stating = (key: string, attribute: string, value: string) =>
    aModel(key, { stated: new Map([[attributeKey(familyIdOf(1), attribute), value]]) })
  const models = [
    stating('FOUR', 'pins', '4'),
    stating('SIX', 'pins', '6'),
    stating('LEFT', 'hinge', 'left'),
    aModel('UNKNOWN'),
  ]
  const check = (measured: Record<string, string>, expected: string[]) => {
    const dossier = aDossier({ family: aFamily({ attributes }) })
    expect(ruleOutModels(dossier, models, asReadings({ measured })).map(({ key }) => key)).toEqual(expected)
  }
  test.each<[Record<string, string>, string[]]>([
    [{ pins: '4' }, ['FOUR', 'LEFT', 'UNKNOWN']],
    [{ hinge: 'right' }, ['FOUR', 'SIX', 'UNKNOWN']],
    [{ hinge: 'Left', pins: '6' }, ['SIX', 'LEFT', 'UNKNOWN']],
    [{ colour: 'white' }, ['FOUR', 'SIX', 'LEFT', 'UNKNOWN']],
  ])('%j leaves %j', check)
})

describe('a date code of the serial outside the time a model was made rules the model out', () => {
  const check = (bySerial: string[], expected: string[]) => {
    const madeBySerial = bySerial.map(daysOf)
    const early = aModel('EARLY', { made: { from: '2010', to: '2012' }, madeBySerial })
    const late = aModel('LATE', { made: { from: '2013', to: '2015' }, madeBySerial })
    expect(ruleOutModels(aDossier({}), [early, late], asReadings({})).map(({ key }) => key)).toEqual(expected)
  }
  test.each<[string[], string[]]>([
    [[], ['EARLY', 'LATE']],
    [['2011-05'], ['EARLY']],
    [['2004-05', '2014-05'], ['LATE']],
    [
      ['2011', '2014'],
      ['EARLY', 'LATE'],
    ],
    [['1999'], ['EARLY', 'LATE']],
  ])('%j leaves %j', check)
})

describe('two values contradict each other where both can be read and none would satisfy both', () => {
  const check = (
    read: string | undefined,
    listed: string | null | undefined,
    unit: string,
    expected: boolean,
  ) => expect(contradicts(read, listed, unit)).toBe(expected)
  test.each([
    ['230', '220-240', 'V', false],
    ['220-240', '230', 'V', false],
    ['240', '220-240', 'V', false],
    ['220', '220-240', 'V', false],
    ['241', '220-240', 'V', true],
    ['219', '220-240', 'V', true],
    ['200-220', '220-240', 'V', false],
    ['240-250', '220-240', 'V', false],
    ['115/230', '220-240', 'V', false],
    ['230', '115/230', 'V', false],
    ['115/120', '220-240', 'V', true],
    [undefined, '230', 'V', false],
    ['230', undefined, 'V', false],
    ['230', null, 'V', false],
    ['', '230', 'V', false],
    ['worn off', '230', 'V', false],
    ['left', 'right', 'text', true],
    ['left', 'Left', 'text', false],
    [undefined, 'right', 'text', false],
  ])('%s and %s in %s: %s', check)
})

test('a model whose brand dates no serials is not ruled out by the date code of another', () => {
  const dated = aModel('DATED', { madeBySerial: [daysOf('2011-06')] })
  const undated = aModel('UNDATED')
  expect(ruleOutModels(aDossier({}), [dated, undated], asReadings({ serial: '1061234' }))).toEqual([
    dated,
    undated,
  ])
})
