import { expect, test } from 'vitest'
import { checkFitments } from '../../../../electron/catalogue/fitments/check-fitments.ts'
import { openTestCatalogue } from '../../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../../builders/small-catalogue.ts'

/** Terms 1 are said of model 1, 2 of model 4, 3 of models 1 to 3: then the fault is planted. */
async function check(plant: string, ok: boolean, detail: string) {
  const { database, load } = openTestCatalogue()
  await load(smallCatalogue)
  database.connection.exec(plant)
  expect(checkFitments(database)).toEqual({ name: 'fitments', ok, detail })
}

const cases: readonly (readonly [title: string, plant: string, ok: boolean, detail: string])[] = [
  ['a sound shop', '', true, 'the same from the model and from the statement'],
  [
    'a model that lost its row',
    'DELETE FROM fitment_by_model WHERE model_id = 1',
    false,
    '2 statements name other models than those that name them',
  ],
  [
    'a statement that lost its row',
    'DELETE FROM fitment_by_terms WHERE terms_id = 2',
    false,
    '1 times a model names a statement that names no models',
  ],
  [
    'a model that names a statement too many',
    "UPDATE fitment_by_model SET terms = x'0102' WHERE model_id = 2",
    false,
    '1 statements name other models than those that name them',
  ],
  [
    'a statement that names another model',
    'UPDATE fitment_by_terms SET first_model_id = 2 WHERE terms_id = 1',
    false,
    '1 statements name other models than those that name them',
  ],
]
test.each(cases)('%s', (_title, plant, ok, detail) => check(plant, ok, detail))
