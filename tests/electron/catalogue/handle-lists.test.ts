import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { asSearched, narrowModels } from '../../../electron/catalogue/model-lists/narrow-models.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

let shop: TestShop
beforeAll(async () => {
  shop = await openTestShop(smallCatalogue)
})
afterAll(() => shop.close())

describe('families', () => {
  test('they stand by what they do, each with its types and how many parts it has', async () => {
    expect(await shop.answer('catalogue.list-families', {})).toEqual({
      count: 2,
      matching: 2,
      families: [
        {
          family: 'door-lock',
          name: 'Door lock',
          function: 'door',
          applianceTypes: ['washer'],
          safetyDevice: true,
          parts: 1,
        },
        {
          family: 'drain-pump',
          name: 'Drain pump',
          function: 'water outlet',
          applianceTypes: ['washer', 'dishwasher'],
          safetyDevice: false,
          parts: 4,
        },
      ],
    })
  })

  test('words are sought in code, name, function and types, and pages follow on one another', async () => {
    const page = await shop.answer('catalogue.list-families', { words: 'dish outlet' })
    expect(page).toMatchObject({ count: 2, matching: 1, families: [{ family: 'drain-pump' }] })
    const second = await shop.answer('catalogue.list-families', { from: 1, most: 1 })
    expect(second).toMatchObject({ matching: 2, families: [{ family: 'drain-pump' }] })
  })

  test('one is read with its hazards and its parts, genuine before pattern', async () => {
    const family = await shop.answer('catalogue.read-family', { family: 'drain-pump' })
    expect(family.hazards).toEqual(['mains', 'moving', 'water'])
    expect(family.parts.map(({ partNumber, kind }) => `${partNumber} ${kind}`)).toEqual([
      '0048-0121 genuine',
      '0048-0122 genuine',
      '0048-0123 genuine',
      'PX 7 pattern',
    ])
  })

  test('one that is not there is refused by name', async () => {
    for (const name of ['catalogue.read-family', 'catalogue.list-models'] as const)
      expect(await shop.ask(name, { family: 'fan' })).toMatchObject({
        ok: false,
        problem: { code: 'family-not-found', typed: 'fan' },
      })
  })
})

describe('models', () => {
  test('those of a family are the ones for which it or one of its parts is listed', async () => {
    const numbers = async (family: string) =>
      (await shop.answer('catalogue.list-models', { family })).models.map(({ modelNumber }) => modelNumber)
    expect(await numbers('drain-pump')).toEqual(['OW 4512/01', 'OW 4512/02', 'OW 4530/01'])
    expect(await numbers('door-lock')).toEqual(['4821-07'])
  })

  test('a model of which it is only said that the part must not be used is not one of them', async () => {
    const other = await openTestShop({
      ...smallCatalogue,
      'fitments.csv': `${smallCatalogue['fitments.csv']}excludes,,1E5,Ostrel,OW 4530/01,,,,,,,Dealer list\n`,
    })
    expect(await other.answer('catalogue.list-models', { family: 'door-lock' })).toMatchObject({ count: 1 })
    other.close()
  })

  test('all of them stand by brand and number, and what is loaded since is there', async () => {
    const other = await openTestShop(smallCatalogue)
    await other.answer('catalogue.list-models', {})
    const [header] = smallCatalogue['models.csv'].split('\n')
    await other.load({ 'models.csv': `${header}\nBrennick,4821-06,oven,,,,,,\n` })
    const { count, brands, models } = await other.answer('catalogue.list-models', {})
    expect([count, brands]).toEqual([
      5,
      [
        { brand: 'Brennick', models: 2 },
        { brand: 'Ostrel', models: 3 },
      ],
    ])
    expect(models.map(({ modelNumber }) => modelNumber)).toEqual([
      '4821-06',
      '4821-07',
      'OW 4512/01',
      'OW 4512/02',
      'OW 4530/01',
    ])
    expect(await other.answer('catalogue.list-models', { words: 'oven' })).toMatchObject({ matching: 1 })
    other.close()
  })

  test('words leave the same of all models, counted in the database, as of a list that is held', async () => {
    const all = (await shop.answer('catalogue.list-models', {})).models
    const word = fc.constantFrom(
      'o',
      'OW',
      '45',
      '/01',
      'washer',
      'dry',
      'brenn',
      'trel',
      '4821-07',
      '-',
      'x',
      'e',
    )
    await fc.assert(
      fc.asyncProperty(
        fc.array(word, { maxLength: 3 }),
        fc.nat(4),
        fc.integer({ min: 1, max: 3 }),
        async (...given) => {
          const [words, from, most] = given
          const left = narrowModels(all.map(asSearched), words.join(' '))
          const page = await shop.answer('catalogue.list-models', { words: words.join(' '), from, most })
          expect(page.matching).toBe(left.length)
          expect(page.brands.reduce((sum, { models }) => sum + models, 0)).toBe(left.length)
          expect(page.models.map(({ modelNumber }) => modelNumber)).toEqual(
            left.slice(from, from + most).map(({ modelNumber }) => modelNumber),
          )
        },
      ),
    )
  })
})
