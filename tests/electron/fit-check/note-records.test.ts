import { describe, expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import type { FitRecord } from '../../../electron/fit-check/fit-record.ts'
import {
  cautionReturns,
  endSentence,
  noteConfirmed,
  partsOfDecision,
} from '../../../electron/fit-check/note-records.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { Verdict } from '../../../shared-schemas/fit-check.ts'
import type { ModelId } from '../../../shared-schemas/identifiers.ts'
import { aDossier, aModel, aPart, aReplacement, aStatement, partIdOf } from '../../builders/fit-dossier.ts'

function aRecord(day: number, rest: Partial<FitRecord> = {}): FitRecord {
  return {
    recordId: `r${day}`,
    kind: 'wrong-fit',
    modelId: 1 as ModelId,
    brand: 'Ostrel',
    modelNumber: 'OW 100',
    partId: partIdOf(1),
    partNumber: 'P1',
    job: null,
    reason: 'spigot too wide',
    initials: 'AB',
    at: `2026-11-${String(day).padStart(2, '0')}T09:00:00.000Z`,
    settled: null,
    ...rest,
  }
}
const recorded = (records: FitRecord[]) => ({
  records,
  modelIds: new Set([1, 2]),
  partIds: new Set([partIdOf(1), partIdOf(2)]),
})

describe('a return that nobody settled stands on a yes, the newest first', () => {
  const check = (verdict: Verdict, records: FitRecord[], expected: string[]) =>
    expect(cautionReturns(verdict, recorded(records)).map(({ recordId }) => recordId)).toEqual(expected)
  const settled = { how: 'wrong part in the box', initials: 'CD', at: '2026-11-20T09:00:00.000Z' }
  test.each<[string, Verdict, FitRecord[], string[]]>([
    ['two of the model and part', 'fits', [aRecord(3), aRecord(5)], ['r5', 'r3']],
    ['a yes with changes', 'fits-with-changes', [aRecord(3)], ['r3']],
    ['a no', 'does-not-fit', [aRecord(3)], []],
    ['a question', 'ask', [aRecord(3)], []],
    ['no record', 'no-record', [aRecord(3)], []],
    ['one that is settled', 'fits', [aRecord(3, { settled })], []],
    ['one that was confirmed', 'fits', [aRecord(3, { kind: 'confirmed' })], []],
    ['one of another model', 'fits', [aRecord(3, { modelId: 3 as ModelId })], []],
    ['one of another part', 'fits', [aRecord(3, { partId: partIdOf(3) })], []],
  ])('%s', (_title, verdict, records, expected) => check(verdict, records, expected))

  test('with what came back, whence, when, who says so and why', () => {
    expect(cautionReturns('fits', recorded([aRecord(3)]))).toEqual([
      {
        code: 'wrong-fit-returned',
        text: 'P1 came back as a wrong fit from Ostrel OW 100 on 2026-11-03 (AB): spigot too wide. Compare it with the old part before it is sold, and settle the return.',
        recordId: 'r3',
      },
    ])
  })
})

describe('a confirmed fit is noted: the last, and how often', () => {
  const confirmed = (day: number, rest: Partial<FitRecord> = {}) =>
    aRecord(day, { kind: 'confirmed', job: `J${day}`, reason: null, ...rest })
  const check = (records: FitRecord[], texts: string[]) =>
    expect(noteConfirmed(recorded(records)).map(({ text }) => text)).toEqual(texts)
  test.each<[string, FitRecord[], string[]]>([
    ['none', [], []],
    ['a return is none', [aRecord(3)], []],
    ['of another part', [confirmed(3, { partId: partIdOf(3) })], []],
    ['once', [confirmed(3)], ['P1 was fitted and confirmed in Ostrel OW 100 on 2026-11-03, job J3.']],
    [
      'three times',
      [
        confirmed(3),
        aRecord(4),
        confirmed(5),
        confirmed(6, { modelNumber: 'OW 200', modelId: 2 as ModelId }),
      ],
      ['P1 was fitted and confirmed in Ostrel OW 200 on 2026-11-06, job J6, 3 times in all.'],
    ],
  ])('%s', (_title, records, texts) => check(records, texts))

  test('under its code and its source', () => {
    expect(noteConfirmed(recorded([confirmed(3)]))).toMatchObject([
      { code: 'confirmed', source: 'shop record, AB 2026-11-03' },
    ])
  })
})

test('what came back under a number that takes the place of the one asked for speaks of the answer', () => {
  const dossier = aDossier({
    parts: [aPart(1), aPart(2), aPart(3)],
    replacements: [aReplacement(1, 2), aReplacement(2, 3)],
    statements: [aStatement(1, { part: 3 })],
  })
  const decision = decideFit(dossier, [aModel('WX12')], asReadings({}))
  expect([...partsOfDecision(partIdOf(1), decision)].sort()).toEqual([1, 2, 3])
  expect([...partsOfDecision(partIdOf(7), decision)].sort()).toEqual([1, 2, 3, 7])
})

test.each([
  ['too wide', 'too wide.'],
  ['too wide.', 'too wide.'],
  ['too wide!', 'too wide!'],
  ['too wide?', 'too wide?'],
  ['3.5 mm too wide', '3.5 mm too wide.'],
])('%s ends a sentence', (words, expected) => expect(endSentence(words)).toBe(expected))
