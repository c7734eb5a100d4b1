import { describe, expect, test } from 'vitest'
import { hintFromSisters, isSafetyDevice, listTakers } from '../../../electron/fit-check/hint-from-sisters.ts'
import type { ModelFacts, PartDossier } from '../../../electron/fit-check/part-dossier.ts'
import {
  aDossier,
  aFamily,
  aModel,
  aPart,
  aReplacement,
  aStatement,
  familyIdOf,
} from '../../builders/fit-dossier.ts'
import { openTestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

describe('of the other models of a platform, those that take the part for certain are counted', () => {
  const check = (dossier: PartDossier, sisters: ModelFacts[], all: number, expected: string[]) =>
    expect(
      hintFromSisters(dossier, listTakers(dossier, sisters).length, all).map(({ text }) => text),
    ).toEqual(expected)
  const listed = aDossier({ statements: [aStatement(1, { part: 1 })] })
  const dated = aDossier({ statements: [aStatement(1, { part: 1, made: { from: '2014-06' } })] })
  const sister = (key: string, made?: { from?: string; to?: string }) =>
    aModel(key, made === undefined ? { terms: [1] } : { terms: [1], made })

  test.each<[string, PartDossier, ModelFacts[], number, string[]]>([
    [
      'some of several',
      listed,
      [sister('WX1'), sister('WX2')],
      6,
      ['2 of 6 other models on the same platform take it. This is a hint, not a listing.'],
    ],
    [
      'one of several',
      listed,
      [sister('WX1')],
      6,
      ['1 of 6 other models on the same platform takes it. This is a hint, not a listing.'],
    ],
    [
      'the only one',
      listed,
      [sister('WX1')],
      1,
      ['The one other model on the same platform takes it. This is a hint, not a listing.'],
    ],
    ['none', listed, [], 6, []],
    ['one that takes it only if made late is not certain', dated, [sister('WX1')], 6, []],
    [
      'one that was always made late is',
      dated,
      [sister('WX1', { from: '2015' }), sister('WX2')],
      6,
      ['1 of 6 other models on the same platform takes it. This is a hint, not a listing.'],
    ],
    [
      'one that forbids it does not take it',
      aDossier({ statements: [aStatement(1, { part: 1, says: 'excludes' })] }),
      [sister('WX1')],
      6,
      [],
    ],
    [
      'one that takes its successor takes it',
      aDossier({
        parts: [aPart(1), aPart(2)],
        replacements: [aReplacement(1, 2)],
        statements: [aStatement(1, { part: 2 })],
      }),
      [sister('WX1')],
      6,
      ['1 of 6 other models on the same platform takes it. This is a hint, not a listing.'],
    ],
    [
      'a safety device never has a hint',
      aDossier({ family: aFamily({ safetyDevice: true }), statements: [aStatement(1, { part: 1 })] }),
      [sister('WX1'), sister('WX2')],
      2,
      [],
    ],
  ])('%s', (_title, dossier, sisters, all, expected) => check(dossier, sisters, all, expected))
})

test('a part is a safety device when that of any family in its chain is one', () => {
  const plain = aFamily()
  const safe = aFamily({ familyId: familyIdOf(2), safetyDevice: true })
  const isSafe = (...families: (typeof plain)[]) =>
    isSafetyDevice({ ...aDossier({}), families: new Map(families.map(one => [one.familyId, one])) })
  expect([isSafe(plain), isSafe(safe), isSafe(plain, safe)]).toEqual([false, true, true])
})

const header = smallCatalogue['fitments.csv'].split('\n')[0]

/** Six washers of one platform and one of another. Of the first nothing is said; five of the others take the pump and the lock. */
const washers = (platform: string) => ({
  'brands.csv': 'brand\nOstrel\n',
  'models.csv': `brand,model_number,appliance_type,platform\n${[1, 2, 3, 4, 5, 6]
    .map(at => `Ostrel,OW 100/${at},washer,${platform}`)
    .join('\n')}\nOstrel,OW 900/1,washer,washer-9\n`,
  'families.csv': 'family,name,safety_device\npump,Pump,no\nlock,Lock,yes\n',
  'parts.csv': 'part_number,family,kind\nP-1,pump,genuine\nL-1,lock,genuine\n',
  'fitments.csv': `${header}\n${[2, 3, 4, 5]
    .flatMap(at => [
      `includes,,P-1,Ostrel,OW 100/${at},,,,,,,list`,
      `includes,,L-1,Ostrel,OW 100/${at},,,,,,,list`,
    ])
    .join('\n')}\nexcludes,,P-1,Ostrel,OW 100/6,,,,,,,list\n`,
})

const questions = ['OW 100/1', 'OW 100/2', 'OW 100/6', 'OW 900/1', 'OW 100', 'OW 100/?'].flatMap(model =>
  ['P-1', 'L-1'].map(part => ({ model, part })),
)

test('with the platform known, some answers carry a hint, and every one is else what it was without', async () => {
  const [known, unknown] = [await openTestShop(washers('washer-1')), await openTestShop(washers(''))]
  const hinted: string[] = []
  for (const question of questions) {
    const { hints, ...answer } = await known.answer('fit-check.judge-fit', question)
    const { hints: none, ...without } = await unknown.answer('fit-check.judge-fit', question)
    expect(none).toEqual([])
    expect(answer).toEqual(without)
    hinted.push(...hints.map(({ models, of }) => `${question.model} ${question.part}: ${models} of ${of}`))
  }
  expect(hinted).toEqual(['OW 100/1 P-1: 4 of 5'])
  known.close()
  unknown.close()
})
