import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { orderBuilding } from '../../../electron/database/migrations/0015-order-building.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a part and a supplier; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(orderBuilding)))
  shop.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO supplier VALUES (1, 'DALE', 'Dale Spares', 'GBP', NULL, '6.00', '100.00', 3);`)
  migrate(shop, migrations.slice(0, migrations.indexOf(orderBuilding) + 1))
})
afterEach(() => shop.close())

test('a shop begins without a budget, and uses no pattern stock in place of genuine parts', () => {
  expect(shop.prepare('SELECT * FROM building_setting').all()).toEqual([
    { only_row: 1, budget: null, uses_pattern_stock: 0 },
  ])
  expect(shop.prepare('SELECT supplier FROM supplier').all()).toEqual([{ supplier: 'DALE' }])
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

test('there is one row of settings, and an empty budget is none', () => {
  expect(() => shop.exec('INSERT INTO building_setting VALUES (2, NULL, 0)')).toThrow('CHECK')
  expect(() => shop.exec("UPDATE building_setting SET budget = ''")).toThrow('CHECK')
})

test('a part has one preferred supplier, both of them on record', () => {
  shop.exec('INSERT INTO preferred_supplier VALUES (1, 1)')
  expect(() => shop.exec('INSERT INTO preferred_supplier VALUES (1, 1)')).toThrow('UNIQUE')
  expect(() => shop.exec('INSERT INTO preferred_supplier VALUES (2, 1)')).toThrow('FOREIGN KEY')
})
