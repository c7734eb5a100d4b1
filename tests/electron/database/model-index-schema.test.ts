import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { modelIndex } from '../../../electron/database/migrations/0006-model-index.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with models and their sales names; then brought to this one, an index being kept. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  const at = migrations.indexOf(modelIndex)
  migrate(shop, migrations.slice(0, at))
  shop.exec(`
    INSERT INTO brand VALUES (1, 'Ostrel', 'OSTREL'), (2, 'Brennick', 'BRENNICK');
    INSERT INTO model (model_id, brand_id, model_number, model_key, appliance_type)
      VALUES (1, 1, 'ODW4512/01', 'ODW451201', 'washer'), (2, 1, 'ODW4512/02', 'ODW451202', 'washer');
    INSERT INTO sales_name VALUES (1, 'AQUALANE', 1, 'Aqualane');`)
  migrate(shop, migrations.slice(0, at + 1))
})
afterEach(() => shop.close())

const noted = () => shop.prepare('SELECT model_id FROM model_index_change ORDER BY model_id').pluck().all()
const keepOne = () => shop.exec('INSERT INTO model_index VALUES (1, 1, 1, 1)')

test('what was there before is all there, and no index is kept', () => {
  expect(shop.prepare('SELECT model_number FROM model').pluck().all()).toEqual(['ODW4512/01', 'ODW4512/02'])
  expect(shop.prepare('SELECT count(*) FROM model_index').pluck().get()).toBe(0)
})

test('while none is kept, nothing is noted', () => {
  shop.exec("UPDATE model SET model_key = 'ODW451203' WHERE model_id = 1")
  expect(noted()).toEqual([])
})

const cases: readonly (readonly [sql: string, noted: readonly number[]])[] = [
  [
    "INSERT INTO model (model_id, brand_id, model_number, model_key, appliance_type) VALUES (7, 1, 'A1B', 'A1B', '')",
    [7],
  ],
  ["UPDATE model SET model_number = 'ODW 4512-01' WHERE model_id = 1", [1]],
  ["UPDATE model SET appliance_type = 'oven'", [1, 2]],
  ['UPDATE model SET brand_id = 2 WHERE model_id = 2', [2]],
  ['UPDATE model SET model_id = 9 WHERE model_id = 2', [2, 9]],
  ['DELETE FROM model WHERE model_id = 2', [2]],
  ["INSERT INTO sales_name VALUES (1, 'FJORD', 2, 'Fjord')", [2]],
  ['UPDATE sales_name SET model_id = 2', [1, 2]],
  ["UPDATE sales_name SET sales_name = 'AquaLane'", [1]],
  ['DELETE FROM sales_name', [1]],
  ["UPDATE model SET made_from = '2014', volts = '230'", []],
  // However the writer wants conflicts handled, noting a model twice is none.
  [
    "UPDATE OR ABORT model SET appliance_type = 'oven'; UPDATE OR ROLLBACK model SET appliance_type = 'hob'",
    [1, 2],
  ],
  [
    "INSERT OR REPLACE INTO model (model_id, brand_id, model_number, model_key, appliance_type) VALUES (2, 1, 'A', 'A', '')",
    [2],
  ],
]
test.each(cases)('%s notes %j', (sql, expected) => {
  keepOne()
  shop.exec(sql)
  expect(noted()).toEqual(expected)
})

test('what is taken back is not noted', () => {
  keepOne()
  shop.exec("BEGIN; UPDATE model SET appliance_type = 'oven'; ROLLBACK")
  expect(noted()).toEqual([])
})

test('one index is kept, not two', () => {
  keepOne()
  expect(() => shop.exec('INSERT INTO model_index VALUES (2, 1, 1, 1)')).toThrow(/CHECK/)
})
