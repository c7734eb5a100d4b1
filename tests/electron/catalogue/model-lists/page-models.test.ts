import fc from 'fast-check'
import { expect, test } from 'vitest'
import { asSearched } from '../../../../electron/catalogue/model-lists/narrow-models.ts'
import { pageModels } from '../../../../electron/catalogue/model-lists/page-models.ts'

const list = (brands: readonly string[]) =>
  brands.toSorted().map((brand, at) =>
    asSearched({
      brand,
      modelNumber: `M ${at}`,
      applianceType: at % 2 === 0 ? 'washer' : 'dryer',
      conditions: [],
    }),
  )

test('a stretch is told with how many there are, how many are left, and of which brands', () => {
  const models = list(['Ostrel', 'Brennick', 'Ostrel', 'Ostrel'])
  const page = pageModels(models, { words: 'washer', from: 1, most: 1 })
  expect(page).toEqual({
    count: 4,
    matching: 2,
    brands: [
      { brand: 'Brennick', models: 1 },
      { brand: 'Ostrel', models: 1 },
    ],
    models: [{ brand: 'Ostrel', modelNumber: 'M 2', applianceType: 'washer', conditions: [] }],
  })
})

test('past the end there is nothing more', () => {
  expect(pageModels(list(['Ostrel']), { words: '', from: 5, most: 10 })).toMatchObject({
    matching: 1,
    models: [],
  })
})

test('the pages put together are the whole list, and the brands’ counts are where each begins', () => {
  const brand = fc.constantFrom('Ostrel', 'Brennick', 'Velmara')
  fc.assert(
    fc.property(
      fc.array(brand),
      fc.constantFrom('', 'washer', 'el'),
      fc.integer({ min: 1, max: 5 }),
      (...given) => {
        const [brands, words, most] = given
        const models = list(brands)
        const whole = pageModels(models, { words, from: 0 })
        const paged = Array.from({ length: Math.ceil(whole.matching / most) }, (_, at) =>
          pageModels(models, { words, from: at * most, most }),
        )
        expect(paged.flatMap(page => page.models)).toEqual(whole.models)
        expect(whole.models).toHaveLength(whole.matching)
        const byBrand = whole.brands.flatMap(({ brand, models: count }) => Array(count).fill(brand))
        expect(whole.models.map(model => model.brand)).toEqual(byBrand)
      },
    ),
  )
})
