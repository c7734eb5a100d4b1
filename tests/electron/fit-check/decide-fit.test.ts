import { describe, expect, test } from 'vitest'
import type { AttributeRule } from '../../../electron/fit-check/compare-attributes.ts'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import type { ModelFacts, PartDossier } from '../../../electron/fit-check/part-dossier.ts'
import { attributeKey } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
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
  familyIdOf,
} from '../../builders/fit-dossier.ts'

interface Case {
  dossier: PartDossier
  models?: ModelFacts[]
  plate?: PlateReadings
}

const check = ({ dossier, models = [aModel('WX12')], plate = {} }: Case, expected: object) => {
  const { verdict, current, ask, alsoNeeds, models: counted } = decideFit(dossier, models, asReadings(plate))
  const asked = ask.map(({ reading, positions }) =>
    positions.length > 0 ? `${reading} ${positions.join()}` : reading,
  )
  expect({ verdict, current, asked, alsoNeeds, ...counted }).toMatchObject(expected)
}

const volts: AttributeRule = { attribute: 'volts', unit: 'V', rule: 'covers', tolerance: null }
const thread: AttributeRule = { attribute: 'thread', unit: '', rule: 'equal', tolerance: null }
const withAttributes = (...parts: Record<string, string>[]) =>
  parts.map((attributes, at) => aPart(at + 1, { attributes: new Map(Object.entries(attributes)) }))

describe('one model', () => {
  test.each<[string, Case, object]>([
    ['nothing said of it is no record', { dossier: aDossier({}) }, { verdict: 'no-record', no: 1 }],
    [
      'a family that is listed fits',
      { dossier: aDossier({ statements: [aStatement(1)] }) },
      { verdict: 'fits', yes: 1 },
    ],
    [
      'a part that is listed fits',
      { dossier: aDossier({ statements: [aStatement(1, { part: 1 })] }) },
      { verdict: 'fits', current: 1 },
    ],
    [
      'an exclusion of the part beats an inclusion of the part',
      {
        dossier: aDossier({
          statements: [aStatement(1, { part: 1 }), aStatement(2, { part: 1, says: 'excludes' })],
        }),
      },
      { verdict: 'does-not-fit' },
    ],
    [
      'an exclusion of the part beats an inclusion of its family',
      { dossier: aDossier({ statements: [aStatement(1), aStatement(2, { part: 1, says: 'excludes' })] }) },
      { verdict: 'does-not-fit' },
    ],
    [
      'an inclusion of the part beats an exclusion of its family',
      {
        dossier: aDossier({ statements: [aStatement(1, { says: 'excludes' }), aStatement(2, { part: 1 })] }),
      },
      { verdict: 'fits' },
    ],
    [
      'an exclusion of the family beats its inclusion',
      { dossier: aDossier({ statements: [aStatement(1), aStatement(2, { says: 'excludes' })] }) },
      { verdict: 'does-not-fit' },
    ],
    [
      'what is said of another model says nothing of this one',
      { dossier: aDossier({ statements: [aStatement(1)] }), models: [aModel('WX12', { terms: [2] })] },
      { verdict: 'no-record' },
    ],
  ])('%s', (_, given, expected) => check(given, expected))
})

describe('conditions', () => {
  const toMay = aDossier({ statements: [aStatement(1, { made: { to: '2014-05' } })] })
  const serialled = aDossier({ statements: [aStatement(1, { serial: { from: '4000', to: '4999' } })] })
  const split = aDossier({
    statements: [
      aStatement(1, { part: 1, made: { to: '2014-05' } }),
      aStatement(2, { made: { from: '2014-06' } }),
    ],
  })
  test.each<[string, Case, object]>([
    [
      'a date that is not read is asked for',
      { dossier: toMay },
      { verdict: 'ask', asked: ['made'], undecided: 1 },
    ],
    ['a date inside fits', { dossier: toMay, plate: { made: '2014-05' } }, { verdict: 'fits' }],
    ['a date outside does not', { dossier: toMay, plate: { made: '2014-06' } }, { verdict: 'does-not-fit' }],
    [
      'a year that straddles the end asks again',
      { dossier: toMay, plate: { made: '2014' } },
      { verdict: 'ask', asked: ['made'] },
    ],
    [
      'a model that was only made inside fits without a date',
      { dossier: toMay, models: [aModel('WX12', { made: { from: '2009', to: '2012' } })] },
      { verdict: 'fits' },
    ],
    [
      'a model that was only made outside does not fit',
      { dossier: toMay, models: [aModel('WX12', { made: { from: '2015' } })] },
      { verdict: 'does-not-fit' },
    ],
    ['a serial that is not read is asked for', { dossier: serialled }, { verdict: 'ask', asked: ['serial'] }],
    ['a serial inside fits', { dossier: serialled, plate: { serial: '4500' } }, { verdict: 'fits' }],
    [
      'a serial outside does not',
      { dossier: serialled, plate: { serial: '5000' } },
      { verdict: 'does-not-fit' },
    ],
    [
      'a serial of another form is asked for again',
      { dossier: serialled, plate: { serial: 'AB-1' } },
      { verdict: 'ask', asked: ['serial'] },
    ],
    [
      'a part listed for a time is not carried past it by its family',
      { dossier: split, plate: { made: '2015' } },
      { verdict: 'does-not-fit' },
    ],
    [
      'two sources that together cover every date need no date',
      {
        dossier: aDossier({
          statements: [
            aStatement(1, { made: { to: '2014-05' } }),
            aStatement(2, { made: { from: '2014-06' } }),
          ],
        }),
      },
      { verdict: 'fits' },
    ],
    [
      'an exclusion with a date is asked for, and lets other dates fit',
      {
        dossier: aDossier({
          statements: [
            aStatement(1),
            aStatement(2, { part: 1, says: 'excludes', made: { from: '2014-06' } }),
          ],
        }),
      },
      { verdict: 'ask', asked: ['made'] },
    ],
    [
      'an exclusion of one position leaves the other',
      {
        dossier: aDossier({
          statements: [
            aStatement(1, { position: 'left' }),
            aStatement(2, { says: 'excludes', position: 'right' }),
          ],
        }),
      },
      { verdict: 'fits' },
    ],
    [
      'an exclusion of the only listed position forbids',
      {
        dossier: aDossier({
          statements: [
            aStatement(1, { position: 'left' }),
            aStatement(2, { says: 'excludes', position: 'left' }),
          ],
        }),
      },
      { verdict: 'does-not-fit' },
    ],
  ])('%s', (_, given, expected) => check(given, expected))
})

describe('supersession', () => {
  const replaced = { parts: [aPart(1), aPart(2)], replacements: [aReplacement(1, 2)] }
  test.each<[string, Case, object]>([
    [
      'a successor fits wherever the part it replaces fitted',
      { dossier: aDossier({ ...replaced, statements: [aStatement(1, { part: 1 })] }) },
      { verdict: 'fits', current: 2 },
    ],
    [
      'a replaced number is answered by what is sold for it',
      { dossier: aDossier({ ...replaced, statements: [aStatement(1, { part: 2 })] }) },
      { verdict: 'fits', current: 2 },
    ],
    [
      'a successor that is excluded does not inherit',
      {
        dossier: aDossier({
          ...replaced,
          statements: [aStatement(1, { part: 1 }), aStatement(2, { part: 2, says: 'excludes' })],
        }),
      },
      { verdict: 'does-not-fit' },
    ],
    [
      'a part does not fit where only its successor was listed: one way is one way',
      {
        dossier: {
          ...aDossier({
            parts: [aPart(3), aPart(4)],
            replacements: [aReplacement(3, 4, { made: { to: '1999' } })],
          }),
          statements: [aStatement(1, { part: 4 })],
        },
        plate: { made: '2014' },
      },
      { verdict: 'no-record', current: 3 },
    ],
    [
      'either of two that replace each other fits where the other is listed',
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2)],
          replacements: [aReplacement(2, 1, { way: 'both' })],
          statements: [aStatement(1, { part: 2 })],
        }),
      },
      { verdict: 'fits', current: 1 },
    ],
    [
      'an exclusion of one of the two stands for both',
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2)],
          replacements: [aReplacement(1, 2, { way: 'both' })],
          statements: [aStatement(1), aStatement(2, { part: 2, says: 'excludes' })],
        }),
      },
      { verdict: 'does-not-fit' },
    ],
    [
      'a replacement that needs another part fits with changes',
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2)],
          replacements: [aReplacement(1, 2, { alsoNeeds: ['P9'] })],
          statements: [aStatement(1, { part: 1 })],
        }),
      },
      { verdict: 'fits-with-changes', current: 2, alsoNeeds: ['P9'] },
    ],
    [
      'a chain is followed to its end',
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2), aPart(3)],
          replacements: [aReplacement(2, 3), aReplacement(1, 2)],
          statements: [aStatement(1, { part: 1 })],
        }),
      },
      { verdict: 'fits', current: 3 },
    ],
    [
      'branches by date ask for the date when both would fit: another part would be sold',
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2), aPart(3)],
          replacements: [
            aReplacement(1, 2, { made: { to: '2014-05' } }),
            aReplacement(1, 3, { made: { from: '2014-06' } }),
          ],
          statements: [aStatement(1, { part: 1 })],
        }),
      },
      { verdict: 'ask', asked: ['made'], current: null },
    ],
    [
      'branches by date are decided by the date',
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2), aPart(3)],
          replacements: [
            aReplacement(1, 2, { made: { to: '2014-05' } }),
            aReplacement(1, 3, { made: { from: '2014-06' } }),
          ],
          statements: [aStatement(1, { part: 1 })],
        }),
        plate: { made: '2016-01' },
      },
      { verdict: 'fits', current: 3 },
    ],
  ])('%s', (_, given, expected) => check(given, expected))
})

describe('what is replaced together, and kits', () => {
  const listed = (quantity: number | null = null) => [aStatement(1, { part: 1, quantity })]
  const pair = { 1: [aCompanion(1, { quantity: 2 })] }
  const successor = { parts: [aPart(1), aPart(2)], replacements: [aReplacement(1, 2)], statements: listed() }
  test.each<[string, Case, object]>([
    [
      'another part that goes in with it is bought besides',
      { dossier: aDossier({ statements: listed(), replacedTogether: { 1: [aCompanion(9)] } }) },
      { verdict: 'fits-with-changes', alsoNeeds: ['P9'] },
    ],
    [
      'it holds in one direction only',
      { dossier: aDossier({ statements: listed(), replacedTogether: { 9: [aCompanion(1)] } }) },
      { verdict: 'fits', alsoNeeds: [] },
    ],
    [
      'a second piece is bought besides where nobody says that the appliance takes two',
      { dossier: aDossier({ statements: listed(), replacedTogether: pair }) },
      { verdict: 'fits-with-changes', alsoNeeds: ['P1'] },
    ],
    [
      'a pair that the appliance takes anyhow changes nothing',
      { dossier: aDossier({ statements: listed(2), replacedTogether: pair }) },
      { verdict: 'fits', alsoNeeds: [] },
    ],
    [
      'left and right are two',
      {
        dossier: aDossier({
          statements: [
            aStatement(1, { part: 1, position: 'left' }),
            aStatement(2, { part: 1, position: 'right' }),
          ],
          replacedTogether: pair,
        }),
      },
      { verdict: 'fits' },
    ],
    [
      'what comes in the kit is not bought besides',
      {
        dossier: aDossier({
          statements: listed(),
          replacedTogether: { 1: [aCompanion(9)] },
          contents: { 1: [aContent(9)] },
        }),
      },
      { verdict: 'fits', alsoNeeds: [] },
    ],
    [
      'a kit with one of two is not enough',
      {
        dossier: aDossier({
          statements: listed(),
          replacedTogether: { 1: [aCompanion(9, { quantity: 2 })] },
          contents: { 1: [aContent(9)] },
        }),
      },
      { verdict: 'fits-with-changes', alsoNeeds: ['P9'] },
    ],
    [
      'a successor that is a kit holds what its replacement needs',
      {
        dossier: aDossier({
          ...successor,
          replacements: [aReplacement(1, 2, { alsoNeeds: ['P9'] })],
          contents: { 2: [aContent(9)] },
        }),
      },
      { verdict: 'fits', current: 2, alsoNeeds: [] },
    ],
    [
      'a kit that was replaced by a single part no longer holds it',
      {
        dossier: aDossier({
          ...successor,
          replacements: [aReplacement(1, 2, { alsoNeeds: ['P9'] })],
          contents: { 1: [aContent(9)] },
        }),
      },
      { verdict: 'fits-with-changes', current: 2, alsoNeeds: ['P9'] },
    ],
    [
      'what goes with the old number goes with the one that takes its place',
      { dossier: aDossier({ ...successor, replacedTogether: { 1: [aCompanion(9)] } }) },
      { verdict: 'fits-with-changes', current: 2, alsoNeeds: ['P9'] },
    ],
    [
      'a pair of the old number is a pair of the new',
      { dossier: aDossier({ ...successor, replacedTogether: pair }) },
      { verdict: 'fits-with-changes', current: 2, alsoNeeds: ['P2'] },
    ],
    [
      'what the replacement needs and what goes with it is named once',
      {
        dossier: aDossier({
          ...successor,
          replacements: [aReplacement(1, 2, { alsoNeeds: ['P9'] })],
          replacedTogether: { 2: [aCompanion(9), aCompanion(8)] },
        }),
      },
      { verdict: 'fits-with-changes', alsoNeeds: ['P9', 'P8'] },
    ],
    [
      'a part that does not fit needs nothing',
      {
        dossier: aDossier({
          statements: [aStatement(1, { part: 1, says: 'excludes' })],
          replacedTogether: { 1: [aCompanion(9)] },
        }),
      },
      { verdict: 'does-not-fit', alsoNeeds: [] },
    ],
    [
      'models of which one takes two and the other one are told apart',
      {
        dossier: aDossier({
          statements: [aStatement(1, { part: 1, quantity: 2 }), aStatement(2, { part: 1, quantity: 1 })],
          replacedTogether: pair,
        }),
        models: [aModel('WX12', { terms: [1] }), aModel('WX13', { terms: [2] })],
      },
      { verdict: 'ask', asked: ['model-number 4'] },
    ],
    [
      'of two numbers whose place it takes, the one that leaves least to buy counts',
      {
        dossier: aDossier({
          parts: [aPart(1), aPart(2), aPart(3)],
          replacements: [
            aReplacement(1, 3, { alsoNeeds: ['P9'] }),
            aReplacement(2, 3, { alsoNeeds: ['P8'] }),
          ],
          statements: [aStatement(1, { part: 2 }), aStatement(2, { part: 1 })],
        }),
      },
      { verdict: 'fits-with-changes', current: 3, alsoNeeds: ['P9'] },
    ],
  ])('%s', (_, given, expected) => check(given, expected))
})

describe('attributes', () => {
  const pump = (partVolts: string) => ({
    parts: withAttributes({ volts: partVolts }),
    family: aFamily({ attributes: [volts] }),
    statements: [aStatement(1)],
  })
  const valve = (differing: string[], part?: number) =>
    aDossier({
      parts: withAttributes({ thread: 'G 3/4' }),
      family: aFamily({ attributes: [thread], differing: new Set(differing) }),
      statements: [part === undefined ? aStatement(1) : aStatement(1, { part })],
    })
  const threaded = (value: string) =>
    aModel('WX12', { stated: new Map([[attributeKey(familyIdOf(1), 'thread'), value]]) })
  test.each<[string, Case, object]>([
    [
      'the model’s volts decide',
      { dossier: aDossier(pump('220..240')), models: [aModel('WX12', { volts: '230' })] },
      { verdict: 'fits' },
    ],
    [
      'the plate’s volts beat the catalogue’s',
      {
        dossier: aDossier(pump('220..240')),
        models: [aModel('WX12', { volts: '230' })],
        plate: { volts: '120' },
      },
      { verdict: 'does-not-fit' },
    ],
    [
      'volts that nobody states are asked for',
      { dossier: aDossier(pump('220..240')) },
      { verdict: 'ask', asked: ['volts'] },
    ],
    [
      'volts are asked for even where the part is listed by number',
      { dossier: aDossier({ ...pump('220..240'), statements: [aStatement(1, { part: 1 })] }) },
      { verdict: 'ask', asked: ['volts'] },
    ],
    [
      'a disagreeing attribute forbids',
      { dossier: valve([]), models: [threaded('G 3/8')] },
      { verdict: 'does-not-fit' },
    ],
    [
      'a disagreeing attribute forbids even a listed part',
      { dossier: valve([], 1), models: [threaded('G 3/8')] },
      { verdict: 'does-not-fit' },
    ],
    [
      'an attribute in which no part of the family differs rests',
      { dossier: valve([]) },
      { verdict: 'fits' },
    ],
    [
      'an attribute in which parts of the family differ must be measured',
      { dossier: valve(['thread']) },
      { verdict: 'ask', asked: ['thread'] },
    ],
    ['unless the part is listed by its own number', { dossier: valve(['thread'], 1) }, { verdict: 'fits' }],
  ])('%s', (_, given, expected) => check(given, expected))
})

describe('safety devices', () => {
  const family = aFamily({ safetyDevice: true })
  test.each<[string, Case, object]>([
    [
      'the family’s word is not enough for a safety device',
      { dossier: aDossier({ family, statements: [aStatement(1)] }) },
      { verdict: 'no-record' },
    ],
    [
      'a safety device listed by its own number fits',
      { dossier: aDossier({ family, statements: [aStatement(1, { part: 1 })] }) },
      { verdict: 'fits' },
    ],
  ])('%s', (_, given, expected) => check(given, expected))
})

describe('several open models', () => {
  const listed = aDossier({ statements: [aStatement(1)] })
  const yes = (key: string) => aModel(key, { terms: [1] })
  const no = (key: string) => aModel(key, { terms: [] })
  test.each<[string, Case, object]>([
    [
      'fits whichever it is',
      { dossier: listed, models: [yes('WX12A'), yes('WX12B')] },
      { verdict: 'fits', open: 2, yes: 2 },
    ],
    [
      'is on record with none of those that do not forbid it',
      {
        dossier: aDossier({ statements: [aStatement(1, { says: 'excludes' })] }),
        models: [yes('WX12A'), no('WX12B')],
      },
      { verdict: 'no-record', no: 2 },
    ],
    [
      'is on record with none',
      { dossier: listed, models: [no('WX12A'), no('WX12B')] },
      { verdict: 'no-record', no: 2 },
    ],
    [
      'asks for the one character that tells them apart',
      { dossier: listed, models: [yes('WX12A'), yes('WX13A'), no('WX12B'), no('WX13B')] },
      { verdict: 'ask', asked: ['model-number 5'], yes: 2, no: 2 },
    ],
    [
      'asks for two characters where no single one decides',
      { dossier: listed, models: [yes('AA'), yes('BB'), no('AB'), no('BA')] },
      { verdict: 'ask', asked: ['model-number 1,2'] },
    ],
    [
      'asks for the brand where two brands print one number',
      { dossier: listed, models: [yes('WX12'), aModel('WX12', { brand: 'Norrvik', modelId: 5, terms: [] })] },
      { verdict: 'ask', asked: ['brand'] },
    ],
    [
      'asks for the date alone where the date decides for all',
      {
        dossier: aDossier({ statements: [aStatement(1, { made: { to: '2014-05' } })] }),
        models: [aModel('WX12A'), aModel('WX12B')],
      },
      { verdict: 'ask', asked: ['made'], undecided: 2 },
    ],
  ])('%s', (_, given, expected) => check(given, expected))

  test('what each value means is said', () => {
    const { ask } = decideFit(listed, [yes('WX12A'), no('WX12B')], asReadings({}))
    expect(ask).toEqual([
      {
        reading: 'model-number',
        positions: [5],
        means: [
          { value: 'A', verdict: 'fits' },
          { value: 'B', verdict: 'no-record' },
        ],
      },
    ])
  })
})

describe('over models that differ in the time they were made', () => {
  const dossier = aDossier({ statements: [aStatement(1)] })
  const listed = (key: string, modelId: number) => aModel(key, { modelId, terms: [1], made: { to: '2010' } })
  const unlisted = (key: string, modelId: number) =>
    aModel(key, { modelId, terms: [], made: { from: '2011' } })
  const asked = (models: ModelFacts[]) =>
    decideFit(dossier, models, asReadings({})).ask.map(({ reading }) => reading)

  test('the date is asked for where one number stands for both', () => {
    expect(asked([listed('WX12', 1), unlisted('WX12', 2)])).toEqual(['made'])
  })

  /** Listed are the numbers with an odd count of ones, so every character of them would be needed. */
  const numbers = (count: number) =>
    Array.from({ length: count }, (_, id) => {
      const key = id.toString(2).padStart(6, '0')
      const isOdd = [...key].filter(character => character === '1').length % 2 === 1
      return isOdd ? listed(key, id + 1) : unlisted(key, id + 1)
    })
  test('the date is asked for instead of many characters of up to fifty models', () => {
    expect(asked(numbers(50))).toEqual(['made'])
    expect(asked(numbers(51))).toEqual(['model-number'])
  })
})

describe('what is needed besides', () => {
  const steps = (early: string[], late: string[]) =>
    aDossier({
      parts: [aPart(1), aPart(2)],
      replacements: [
        aReplacement(1, 2, { made: { to: '2014' }, alsoNeeds: early }),
        aReplacement(1, 2, { made: { from: '2015' }, alsoNeeds: late }),
      ],
      statements: [aStatement(1)],
    })
  test.each<[string, PartDossier, object]>([
    ['in another order is the same', steps(['S1', 'S2'], ['S2', 'S1']), { verdict: 'fits-with-changes' }],
    ['is told by whole numbers', steps(['1', '23'], ['12', '3']), { verdict: 'ask', asked: ['made'] }],
    ['is not said before it is decided', steps(['S1'], []), { verdict: 'ask', alsoNeeds: [], current: 2 }],
  ])('%s', (_title, dossier, expected) => check({ dossier }, expected))
})

test('where what is supplied today waits for a reading, the chain is the number asked for', () => {
  const dossier = aDossier({
    parts: [aPart(1), aPart(2)],
    replacements: [aReplacement(1, 2, { made: { from: '2015' } })],
    statements: [aStatement(1)],
  })
  expect(decideFit(dossier, [aModel('WX12')], asReadings({}))).toMatchObject({ current: null, chain: [1] })
})

test('an answer counts the models of every kind for which it was met', () => {
  const dossier = aDossier({
    parts: [aPart(1), aPart(2), aPart(3)],
    replacements: [aReplacement(2, 3, { made: { from: '2011' } })],
    statements: [aStatement(1)],
  })
  const models = [aModel('EARLY', { made: { to: '2010' } }), aModel('LATE', { made: { from: '2011' } })]
  expect(decideFit(dossier, models, asReadings({})).answers.map(answer => answer.models)).toEqual([2])
})

test('answers that rest on other statements are told apart', () => {
  const dossier = aDossier({ statements: [aStatement(1), aStatement(2)] })
  const models = [aModel('WXA', { terms: [1] }), aModel('WXB', { terms: [2] })]
  const { verdict, answers } = decideFit(dossier, models, asReadings({}))
  expect(verdict).toBe('fits')
  expect(answers.map(({ statements }) => statements.map(({ termsId }) => termsId))).toEqual([[1], [2]])
})

test('answers that differ in how many of another part go in are told apart', () => {
  const dossier = aDossier({
    parts: [aPart(2), aPart(1)],
    replacements: [aReplacement(1, 2, { made: { to: '2014' } })],
    statements: [aStatement(1, { part: 2 })],
    replacedTogether: { 1: [aCompanion(9, { quantity: 2 })], 2: [aCompanion(9)] },
  })
  const { answers } = decideFit(dossier, [aModel('WX12')], asReadings({}))
  expect(answers.map(({ together }) => together.map(({ quantity }) => quantity))).toEqual([[2], [1]])
})

test('the characters at several positions are shown apart, one that is not there as a dash', () => {
  const dossier = aDossier({ statements: [aStatement(1)] })
  const models = [
    aModel('WAA', { terms: [1] }),
    aModel('WAB', { terms: [] }),
    aModel('WBA', { terms: [] }),
    aModel('WBB', { terms: [1] }),
    aModel('WB', { terms: [] }),
  ]
  expect(decideFit(dossier, models, asReadings({})).ask).toEqual([
    {
      reading: 'model-number',
      positions: [2, 3],
      means: [
        { value: 'A A', verdict: 'fits' },
        { value: 'B B', verdict: 'fits' },
        { value: 'A B', verdict: 'no-record' },
        { value: 'B A', verdict: 'no-record' },
        { value: 'B –', verdict: 'no-record' },
      ],
    },
  ])
})
