import { describe, expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import type { PartDossier } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { aDossier, aFamily, aModel, aPart, aReplacement, aStatement } from '../../builders/fit-dossier.ts'

/** Asked of part 1, which takes the place of 2 and of 3; each of them is listed. */
const listedAsReplaced = (order: [number, number]) =>
  aDossier({
    parts: [aPart(1), aPart(2), aPart(3)],
    replacements: [
      aReplacement(2, 1, { alsoNeeds: ['S2', 'S9'] }),
      aReplacement(3, 1, { alsoNeeds: ['S9', 'S1'] }),
    ],
    statements: order.map((part, at) => aStatement(at + 1, { part })),
  })
const volts = { attribute: 'volts', unit: 'V', rule: 'equal', tolerance: null } as const

describe('an appliance of which everything is known gets one answer, with what decided it', () => {
  const check = (dossier: PartDossier, volts: string | undefined, expected: object) => {
    const { answers } = decideFit(dossier, [aModel('WX12')], asReadings(volts === undefined ? {} : { volts }))
    const nothingElse = { alsoNeeds: [], together: [], disagreeing: [], models: 1 }
    expect(answers).toMatchObject([{ ...nothingElse, ...expected }])
  }
  test.each<[string, PartDossier, string | undefined, object]>([
    [
      'nothing said, whatever a replacement needs',
      aDossier({ parts: [aPart(1), aPart(2)], replacements: [aReplacement(1, 2, { alsoNeeds: ['S1'] })] }),
      undefined,
      { outcome: 'no-record', because: 'nothing-said', current: 2, chain: [1, 2] },
    ],
    [
      'the part is forbidden everywhere, also where a place is allowed',
      aDossier({
        statements: [
          aStatement(1, { part: 1, says: 'excludes' }),
          aStatement(2, { part: 1, position: 'left' }),
        ],
      }),
      undefined,
      { outcome: 'no', because: 'excluded-part' },
    ],
    [
      'a place of the part is forbidden and no other allowed',
      aDossier({ statements: [aStatement(1, { part: 1, says: 'excludes', position: 'left' })] }),
      undefined,
      { outcome: 'no', because: 'excluded-part' },
    ],
    [
      'the only place that is allowed is forbidden',
      aDossier({
        statements: [
          aStatement(1, { part: 1, says: 'excludes', position: 'left' }),
          aStatement(2, { part: 1, position: 'left' }),
        ],
      }),
      undefined,
      { outcome: 'no', because: 'excluded-part' },
    ],
    [
      'a place of the family is forbidden and no other allowed',
      aDossier({ statements: [aStatement(1, { says: 'excludes', position: 'left' })] }),
      undefined,
      { outcome: 'no', because: 'excluded-family' },
    ],
    [
      'a safety device that only its family is listed for',
      aDossier({ family: aFamily({ safetyDevice: true }), statements: [aStatement(1)] }),
      undefined,
      { outcome: 'no-record', because: 'safety-device-not-listed' },
    ],
    [
      'a voltage that disagrees',
      aDossier({
        parts: [aPart(1, { attributes: new Map([['volts', '230']]) })],
        family: aFamily({ attributes: [volts] }),
        statements: [aStatement(1, { part: 1 })],
      }),
      '120',
      { outcome: 'no', because: 'attribute-disagrees', disagreeing: ['volts'] },
    ],
    // Of two ways that need as much, the one whose needs come first by name, however they are written.
    [
      'of two listed parts whose place it takes, the first by what is needed',
      listedAsReplaced([2, 3]),
      undefined,
      { outcome: 'yes', because: 'listed-as-replaced', alsoNeeds: ['S9', 'S1'] },
    ],
    [
      'the same in another order',
      listedAsReplaced([3, 2]),
      undefined,
      { outcome: 'yes', because: 'listed-as-replaced', alsoNeeds: ['S9', 'S1'] },
    ],
  ])('%s', (_title, dossier, read, expected) => check(dossier, read, expected))
})

test('a family that is listed for another time says no by its conditions', () => {
  const dossier = aDossier({ statements: [aStatement(1, { made: { to: '2014' } })] })
  const { answers } = decideFit(dossier, [aModel('WX12')], asReadings({ made: '2015' }))
  expect(answers).toMatchObject([{ outcome: 'no', because: 'conditions-fail' }])
})

test('what stands for a part only for a time shares its listing only then', () => {
  const dossier = aDossier({
    parts: [aPart(1), aPart(2)],
    replacements: [aReplacement(1, 2, { way: 'both', made: { to: '2014' } })],
    statements: [aStatement(1, { part: 2 })],
  })
  const on = (made: string) => decideFit(dossier, [aModel('WX12')], asReadings({ made })).verdict
  expect([on('2014'), on('2015')]).toEqual(['fits', 'no-record'])
})
