import { describe, expect, test } from 'vitest'
import { cautionsOfReading } from '../../../electron/fit-check/caution-reading.ts'
import { cautionsOfFamily } from '../../../electron/fit-check/hazard-cautions.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { OpenModels } from '../../../electron/model-lookup/open-models.ts'
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

test('licensed work is named before the rest, and a safety device last', () => {
  const cautions = cautionsOfFamily(aFamily({ hazards: ['mains', 'gas', 'water'], safetyDevice: true }))
  expect(cautions.map(({ code }) => code)).toEqual(['gas', 'mains', 'water', 'safety-device'])
})

test.each(['gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring'])(
  '%s is left to those who are licensed for it',
  hazard => {
    const [caution] = cautionsOfFamily(aFamily({ hazards: [hazard] }))
    expect(caution?.text).toMatch(/licensed|certified|trained/)
  },
)
