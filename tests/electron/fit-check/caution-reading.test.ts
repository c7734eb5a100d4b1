import { describe, expect, test } from 'vitest'
import { cautionsOfReading } from '../../../electron/fit-check/caution-reading.ts'
import { cautionsOfFamily } from '../../../electron/fit-check/hazard-cautions.ts'
import { daysOf } from '../../../electron/fit-check/made-dates.ts'
import type { ModelFacts } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { OpenModels } from '../../../electron/model-lookup/open-models.ts'
import type { ModelId } from '../../../shared-schemas/identifiers.ts'
import type { PlateReadings } from '../../../shared-schemas/plate-reading.ts'
import { aFamily, aModel } from '../../builders/fit-dossier.ts'

describe('what does not go together makes the model number doubtful', () => {
  const model = aModel('WX12', { made: { from: '2010', to: '2014' }, volts: '220-240' })
  const open: OpenModels = { typed: 'WX12', key: 'WX12', outcome: 'exact', agreement: 'agrees', models: [] }
  const check = (plate: PlateReadings, codes: string[]) =>
    expect(cautionsOfReading(open, [model], asReadings(plate)).map(({ code }) => code)).toEqual(codes)
  test.each<[PlateReadings, string[]]>([
    [{}, []],
    [{ made: '2014-12', volts: '230' }, []],
    [{ made: '2015' }, ['made-outside']],
    [{ volts: '120' }, ['volts-differ']],
    [{ made: '2009', volts: '110-127' }, ['made-outside', 'volts-differ']],
  ])('%j', check)
})

describe('the caution says what was read, what the catalogue has and what to check', () => {
  const check = (
    models: ModelFacts[],
    plate: PlateReadings,
    expected: [string, string][],
    agreement: OpenModels['agreement'] = 'agrees',
  ) => {
    const named = models.map(({ modelId, brand, modelNumber, key }) => ({
      modelId: modelId as ModelId,
      brand,
      modelNumber,
      key,
      applianceType: 'washer',
    }))
    const open: OpenModels = { typed: 'WX l2', key: 'WXL2', outcome: 'exact', agreement, models: named }
    const cautions = cautionsOfReading(open, models, asReadings(plate))
    expect(cautions.map(({ code, text }) => [code, text])).toEqual(expected)
  }
  const bySerial = (key: string, bySerials: string[], made?: { from?: string; to?: string }) =>
    aModel(key, { madeBySerial: bySerials.map(daysOf), ...(made && { made }) })
  const outside =
    'which does not go with the date read or with this model. Check the serial and the model number.'
  const madeOutside = 'The date of making, 2015-01 to 2015-12, lies outside the time this model was made'
  test.each<[string, ModelFacts[], PlateReadings, [string, string][]]>([
    [
      'made outside the time of one model',
      [aModel('A', { made: { to: '2014-05' } })],
      { made: '2015' },
      [['made-outside', `${madeOutside} (to 2014-05). Check the date and the model number.`]],
    ],
    [
      'made outside the time of several',
      [aModel('A', { made: { to: '2014-05' } }), aModel('B', { made: { to: '2013' } })],
      { made: '2015' },
      [['made-outside', `${madeOutside}. Check the date and the model number.`]],
    ],
    [
      'made in the time of one of several',
      [aModel('A', { made: { to: '2014-05' } }), aModel('B')],
      { made: '2015' },
      [],
    ],
    [
      'a voltage that no model has',
      [aModel('A', { volts: '230' }), aModel('B', { volts: '240' })],
      { volts: '120' },
      [
        [
          'volts-differ',
          'The plate reads 120 V; the catalogue has another value for this model. Check the model number and its suffix.',
        ],
      ],
    ],
    [
      'a voltage that one model has',
      [aModel('A', { volts: '230' }), aModel('B', { volts: '120' })],
      { volts: '120' },
      [],
    ],
    [
      'a date code outside the time of the model',
      [bySerial('A', ['2004-06', '2014-06'], { from: '2008', to: '2012' })],
      { serial: '4061234' },
      [['serial-date-differs', `By its date code serial 4061234 was made 2004-06 or 2014-06, ${outside}`]],
    ],
    [
      'a date code besides the date read',
      [bySerial('A', ['2011-06'])],
      { serial: '1061234', made: '2012' },
      [['serial-date-differs', `By its date code serial 1061234 was made 2011-06, ${outside}`]],
    ],
    [
      'a date code of which one reading goes',
      [bySerial('A', ['2004-06', '2011-06'], { from: '2008' })],
      { serial: '1061234' },
      [],
    ],
    [
      'a date code that goes with the date read',
      [bySerial('A', ['2011-06'])],
      { serial: '1061234', made: '2011' },
      [],
    ],
    ['no serial', [bySerial('A', ['2004-06'], { from: '2008' })], {}, []],
    ['a serial without a date', [bySerial('A', [], { from: '2008' })], { serial: '1061234' }, []],
    ['no model', [], { serial: '1061234', made: '2011', volts: '230' }, []],
  ])('%s', (_title, models, plate, expected) => check(models, plate, expected))

  const lookalike = (read: string): [string, string][] => [
    ['read-as', `“WX l2” was read as ${read}: characters that look alike differ. Compare with the plate.`],
  ]
  test.each<[string, ModelFacts[], OpenModels['agreement'], [string, string][]]>([
    ['one model', [aModel('WX12')], 'confusable', lookalike('WX12')],
    ['several', [aModel('WX12'), aModel('WXI2')], 'confusable', lookalike('the numbers that look alike')],
    ['none', [], 'confusable', []],
    ['one as printed', [aModel('WXL2')], 'agrees', []],
  ])('characters that look alike: %s', (_title, models, agreement, expected) =>
    check(models, {}, expected, agreement),
  )
})

test('licensed work is named before the rest, and a safety device last', () => {
  const cautions = cautionsOfFamily(aFamily({ hazards: ['mains', 'gas', 'water'], safetyDevice: true }))
  expect(cautions.map(({ code }) => code)).toEqual(['gas', 'mains', 'water', 'safety-device'])
})

test.each(['gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring'])(
  '%s is left to those who are licensed for it',
  hazard => {
    const [caution] = cautionsOfFamily(aFamily({ hazards: [hazard] }))
    expect(caution?.text).toMatch(/licensed or certified for it where you are; local codes decide/)
  },
)
