import { expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { explainVerdict } from '../../../electron/fit-check/explain-verdict.ts'
import { daysBetween } from '../../../electron/fit-check/made-dates.ts'
import type { ModelFacts, PartDossier } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { Why } from '../../../shared-schemas/fit-check.ts'
import type { PlateReadings } from '../../../shared-schemas/plate-reading.ts'
import {
  aCompanion,
  aContent,
  aDossier,
  aFamily,
  aModel,
  aPart,
  aReplacement,
  aStatement,
} from '../../builders/fit-dossier.ts'

interface Case {
  dossier: PartDossier
  models?: ModelFacts[]
  plate?: PlateReadings
}

const check = ({ dossier, models = [aModel('WX12')], plate = {} }: Case, expected: Partial<Why>) => {
  const readings = asReadings(plate)
  const why = explainVerdict({ dossier, models, readings }, decideFit(dossier, models, readings))
  expect(why).toMatchObject(expected)
}

const dated = aDossier({ statements: [aStatement(1, { made: { from: '2014-06' } })] })
const numbered = aDossier({ statements: [aStatement(1, { serial: { from: '4000', to: '4999' } })] })
const rated = aDossier({
  parts: [aPart(1, { attributes: new Map([['volts', '220..240']]) })],
  family: aFamily({ attributes: [{ attribute: 'volts', unit: 'V', rule: 'covers', tolerance: null }] }),
  statements: [aStatement(1)],
})
const made = (rest: object) => ({ statements: [{ conditions: [{ reading: 'made' as const, ...rest }] }] })
const serial = (rest: object) => ({ statements: [{ conditions: [{ reading: 'serial' as const, ...rest }] }] })
const volts = (rest: object) => ({
  attributes: [{ attribute: 'volts', unit: 'V', part: '220..240', ...rest }],
})

test.each<[string, Case, object]>([
  ['nothing said has no step', { dossier: aDossier({}) }, { replaced: [], statements: [], attributes: [] }],
  [
    'a statement is named with its source and place',
    { dossier: aDossier({ statements: [aStatement(1, { part: 1, position: 'left' })] }) },
    {
      statements: [
        {
          says: 'includes',
          subject: 'P1',
          position: 'left',
          source: 'test list',
          models: 1,
          conditions: [],
        },
      ],
    },
  ],
  [
    'each replacement is a step, with what it needs',
    {
      dossier: aDossier({
        parts: [aPart(1), aPart(2), aPart(3)],
        replacements: [aReplacement(1, 2, { alsoNeeds: ['K1'] }), aReplacement(2, 3)],
        statements: [aStatement(1)],
      }),
    },
    {
      replaced: [
        { by: 'P2', alsoNeeds: ['K1'] },
        { by: 'P3', alsoNeeds: [] },
      ],
    },
  ],
  [
    'what goes in together with what provides it, what comes in the kit, and the kits it comes in',
    {
      dossier: aDossier({
        statements: [aStatement(1, { part: 1, quantity: 2 })],
        replacedTogether: {
          1: [aCompanion(1, { quantity: 2 }), aCompanion(9, { why: 'seals set' }), aCompanion(8)],
        },
        contents: { 1: [aContent(8, 3)] },
        kitsWith: { 1: [{ partNumber: aContent(7).partNumber, contents: [aContent(1)] }] },
      }),
    },
    {
      together: [
        { part: 'P1', quantity: 2, from: 'in-count', why: null },
        { part: 'P8', quantity: 1, from: 'in-kit', why: null },
        { part: 'P9', quantity: 1, from: 'besides', why: 'seals set' },
      ],
      contents: [{ part: 'P8', quantity: 3 }],
      kits: ['P7'],
    },
  ],
  [
    'a date that nobody read leaves the condition open',
    { dossier: dated },
    made({ wants: '2014-06 on', read: null, from: null, holds: null }),
  ],
  [
    'a date off the plate that lies inside',
    { dossier: dated, plate: { made: '2015' } },
    made({ read: '2015-01 to 2015-12', from: 'plate', holds: true }),
  ],
  [
    'a date off the plate that lies before',
    { dossier: dated, plate: { made: '2013-02' } },
    made({ read: '2013-02', from: 'plate', holds: false }),
  ],
  [
    'a date off the plate that lies across',
    { dossier: dated, plate: { made: '2014' } },
    made({ from: 'plate', holds: null }),
  ],
  [
    "the catalogue's dates of the model",
    { dossier: dated, models: [aModel('WX12', { made: { from: '2016', to: '2017' } })] },
    made({ read: '2016-01 to 2017-12', from: 'catalogue', holds: true }),
  ],
  [
    "the serial's date code",
    {
      dossier: dated,
      models: [aModel('WX12', { madeBySerial: [daysBetween('2012', '2012')] })],
      plate: { serial: '12' },
    },
    made({ read: '2012-01 to 2012-12', from: 'date-code', holds: false }),
  ],
  [
    'a serial inside',
    { dossier: numbered, plate: { serial: '4100' } },
    serial({ wants: '4000 to 4999', read: '4100', from: 'plate', holds: true }),
  ],
  ['a serial outside', { dossier: numbered, plate: { serial: '5000' } }, serial({ holds: false })],
  ['a serial of another form', { dossier: numbered, plate: { serial: 'A-77' } }, serial({ holds: null })],
  ['no serial', { dossier: numbered }, serial({ read: null, from: null, holds: null })],
  [
    'an attribute off the plate',
    { dossier: rated, plate: { volts: '230' } },
    volts({ appliance: '230', from: 'plate', agreement: 'agrees' }),
  ],
  [
    'an attribute of the catalogue',
    { dossier: rated, models: [aModel('WX12', { volts: '115' })] },
    volts({ appliance: '115', from: 'catalogue', agreement: 'disagrees' }),
  ],
  [
    'an attribute that nobody stated',
    { dossier: rated },
    volts({ appliance: null, from: null, agreement: 'unknown' }),
  ],
  [
    'of two models a statement speaks of one',
    {
      dossier: aDossier({ statements: [aStatement(1)] }),
      models: [aModel('WX12A', { terms: [1] }), aModel('WX12B', { terms: [] })],
    },
    { statements: [{ models: 1 }] },
  ],
])('%s', (_title, given, expected) => check(given, expected))
