import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { reorderSettings } from '../../../electron/database/migrations/0014-reorder-settings.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a part that was used; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(reorderSettings)))
  shop.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO location VALUES (1, 'shop', 'shop', 'Shop');
    INSERT INTO usage VALUES ('2026-01-05', 1, 1, 'J1', 2);`)
  migrate(shop, migrations.slice(0, migrations.indexOf(reorderSettings) + 1))
})
afterEach(() => shop.close())

test('what was used stays as it was, and a shop begins with usual settings', () => {
  expect(shop.prepare('SELECT date, quantity, job FROM usage').all()).toEqual([
    { date: '2026-01-05', quantity: 2, job: 'J1' },
  ])
  expect(shop.prepare('SELECT * FROM reorder_setting').all()).toEqual([
    { only_row: 1, fill_rate: 0.95, review_days: 7, lead_days: 7, line_cost: null, holding_rate: 0.25 },
  ])
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

test('there is one row of settings, and a fill rate is a share that can be reached', () => {
  expect(() => shop.exec('INSERT INTO reorder_setting VALUES (2, 0.9, 7, 7, NULL, 0.25)')).toThrow('CHECK')
  expect(() => shop.exec('UPDATE reorder_setting SET fill_rate = 1')).toThrow('CHECK')
})

test('a shelf holds none or more of a part that there is', () => {
  expect(() => shop.exec('INSERT INTO shelf_limit VALUES (1, -1)')).toThrow('CHECK')
  expect(() => shop.exec('INSERT INTO shelf_limit VALUES (2, 4)')).toThrow('FOREIGN KEY')
})

test('a mark of a one-off job is never edited or deleted', () => {
  const id = '0190a000-0000-7000-8000-000000000001'
  shop.exec(`INSERT INTO one_off_mark VALUES ('${id}', 'J1', 1, '2026-11-23T09:00:00.000Z', 'counter', 'AB')`)
  expect(() => shop.exec('UPDATE one_off_mark SET is_one_off = 0')).toThrow('never edited')
  expect(() => shop.exec('DELETE FROM one_off_mark')).toThrow('never deleted')
})
