import { describe, expect, test } from 'vitest'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { ruleOutModels } from '../../../electron/fit-check/rule-out-models.ts'
import type { PlateReadings } from '../../../shared-schemas/plate-reading.ts'
import { aDossier, aModel } from '../../builders/fit-dossier.ts'

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
