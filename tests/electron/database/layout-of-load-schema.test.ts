import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { layoutOfLoad } from '../../../electron/database/migrations/0018-layout-of-load.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with one load in its log; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(layoutOfLoad)))
  shop.exec(`
    INSERT INTO load_run (load_run_id, loaded_at, path, added, changed, unchanged, rejected, first_fitments)
      VALUES (1, '2026-11-23T09:00:00.000Z', 'harrow.csv', 1, 0, 0, 0, 0), (2, '2026-11-24T09:00:00.000Z', 'harrow.csv', 1, 0, 0, 0, 0);
    INSERT INTO load_account VALUES (1, 'AB', 'counter', 1, 0, NULL);`)
  migrate(shop, migrations.slice(0, migrations.indexOf(layoutOfLoad) + 1))
})
afterEach(() => shop.close())

test('a load of the layout before stays, without a layout', () => {
  expect(shop.prepare('SELECT load_run_id, initials, layout FROM load_account').all()).toEqual([
    { load_run_id: 1, initials: 'AB', layout: null },
  ])
})

test('a layout has a name, and a load is still never edited', () => {
  const insert = shop.prepare("INSERT INTO load_account VALUES (2, 'AB', 'counter', 1, 0, NULL, ?)")
  expect(() => insert.run('')).toThrow('CHECK')
  insert.run('Harrow list')
  expect(() => shop.exec("UPDATE load_account SET layout = 'Tarrow list'")).toThrow()
})
