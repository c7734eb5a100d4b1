import { describe, expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import type { ModelFacts, PartDossier } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { wordReasons } from '../../../electron/fit-check/word-answer.ts'
import { wordAsked } from '../../../electron/fit-check/word-asked.ts'
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

describe('a verdict is read as a colleague would say it', () => {
  const check = ({ dossier, models = [aModel('WX12')], plate = {} }: Case, expected: string[]) => {
    const readings = asReadings(plate)
    const decision = decideFit(dossier, models, readings)
    const said = [...wordReasons({ dossier, models, readings }, decision), ...decision.ask.map(wordAsked)]
    expect(said.map(({ text }) => text)).toEqual(expected)
  }
  const yes = (key: string) => aModel(key, { terms: [1] })
  const no = (key: string) => aModel(key, { terms: [] })
  test.each<[Case, string[]]>([
    [{ dossier: aDossier({}) }, ['Nothing is said of P1 or of inlet valve for this model.']],
    [
      {
        dossier: aDossier({ statements: [aStatement(1, { position: 'left', made: { from: '2014-06' } })] }),
        plate: { made: '2015' },
      },
      ['inlet valve: listed, made 2014-06 on, position left.'],
    ],
    [
      {
        dossier: aDossier({ statements: [aStatement(1, { part: 1, serial: { from: '4000', to: '4999' } })] }),
      },
      [
        'P1: listed, serial 4000 to 4999.',
        'P1: listed only serial 4000 to 4999.',
        'Read the serial number: 4000 to 4999 fits; any other does not fit.',
      ],
    ],
    [
      {
        dossier: aDossier({ statements: [aStatement(1)] }),
        models: [yes('WX12A'), no('WX12B'), no('WX12C')],
      },
      [
        'Of the 3 open models it fits 1, not 2.',
        'Nothing is said of P1 or of inlet valve for these models (2 of 3 models).',
        'inlet valve: listed (1 of 3 models).',
        'Read character 5 of the model number: A fits; B or C is not on record.',
      ],
    ],
    [
      { dossier: aDossier({ statements: [aStatement(1)] }), models: [yes('WX12A'), yes('WX12B')] },
      ['Fits whichever of the 2 open models it is.', 'inlet valve: listed.'],
    ],
    [
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2)],
          replacements: [aReplacement(1, 2, { alsoNeeds: ['P9'] })],
          statements: [aStatement(1, { part: 1 })],
        }),
      },
      ['P1 is replaced by P2. Also needed: P9.', 'P1: listed; P2 takes its place, with P9.'],
    ],
    [
      {
        dossier: aDossier({
          statements: [aStatement(1)],
          replacedTogether: {
            1: [aCompanion(1, { quantity: 2, why: 'springs age alike' }), aCompanion(9), aCompanion(8)],
          },
          contents: { 1: [aContent(8)] },
          kitsWith: { 1: [{ partNumber: aContent(7).partNumber, contents: [aContent(1), aContent(6)] }] },
        }),
      },
      [
        'inlet valve: listed.',
        'Replace both together: 2 of P1 (springs age alike).',
        'P8 is replaced together with P1. It comes in this kit.',
        'P9 is replaced together with P1.',
        'P1 also comes in kit P7 (with P6).',
      ],
    ],
    [
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2)],
          replacements: [aReplacement(1, 2)],
          statements: [aStatement(1, { part: 1 })],
          replacedTogether: { 2: [aCompanion(9, { quantity: 3 })] },
        }),
      },
      ['P1 is replaced by P2.', 'P1: listed; P2 takes its place.', '3 of P9 are replaced together with P2.'],
    ],
    [
      {
        dossier: aDossier({
          statements: [aStatement(1, { says: 'excludes' })],
          replacedTogether: { 1: [aCompanion(9)] },
          kitsWith: { 1: [{ partNumber: aContent(7).partNumber, contents: [aContent(1)] }] },
        }),
      },
      ['inlet valve: must not be used here.'],
    ],
    [
      { dossier: aDossier({ family: aFamily({ safetyDevice: true }), statements: [aStatement(1)] }) },
      [
        'inlet valve is listed, but it is a safety device: only a part listed by its own number may go in, and P1 is not.',
      ],
    ],
    [
      {
        dossier: aDossier({
          parts: [aPart(1, { attributes: new Map([['volts', '220..240']]) })],
          family: aFamily({
            attributes: [{ attribute: 'volts', unit: 'V', rule: 'covers', tolerance: null }],
          }),
          statements: [aStatement(1)],
        }),
        plate: { volts: '120' },
      },
      ['volts: part 220..240 V, appliance 120 V; disagrees.'],
    ],
  ])('%#', check)
})
