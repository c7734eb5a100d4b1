import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate, readLayout } from '../../../electron/database/migrate.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop as the first layout left it, with rows in place. */
function openFirstLayout(): Database.Database {
  const connection = new Database(':memory:')
  connection.pragma('foreign_keys = ON')
  migrate(connection, migrations.slice(0, 1))
  connection.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO location VALUES (1, 'shop', 'shop', 'Shop');
    INSERT INTO movement (movement_id, kind, part_id, quantity, from_location_id, to_location_id, recorded_at, device,
      initials, reason) VALUES ('0190a000-0000-7000-8000-000000000001', 'receipt', 1, 5, NULL, 1, '2026-11-23T09:00:00Z',
      'counter', 'AB', 'test')`)
  return connection
}

let connection: Database.Database
beforeEach(() => {
  connection = openFirstLayout()
})
afterEach(() => {
  connection.close()
})

const override = (changed: Readonly<Record<string, string | number | null>> = {}) => {
  const row = {
    override_id: '0190a000-0000-7000-8000-000000000009',
    part_key: 'P101',
    part_number: 'P-101',
    brand_key: '',
    model_key: '',
    made: '',
    serial: '',
    supplier: '',
    code: 'does-not-fit',
    reason: 'the maker says so on the telephone',
    initials: 'AB',
    recorded_at: '2026-11-23T09:00:00.000Z',
    device: 'counter',
    ...changed,
  }
  const names = Object.keys(row)
  return connection
    .prepare(`INSERT INTO order_check_override (${names}) VALUES (${names.map(() => '?')})`)
    .run(...Object.values(row))
}

test('a shop of the first layout keeps its rows and can record overrides', () => {
  migrate(connection, migrations.slice(0, 2))
  expect(readLayout(connection)).toBe(2)
  expect(connection.prepare('SELECT sum(quantity) FROM movement').pluck().get()).toBe(5)
  expect(connection.prepare('SELECT part_number FROM part').pluck().all()).toEqual(['1E5'])
  override()
  expect(connection.prepare('SELECT count(*) FROM order_check_override').pluck().get()).toBe(1)
  expect(connection.pragma('foreign_key_check')).toEqual([])
})

test.each([
  ['is not edited', 'UPDATE order_check_override SET reason = reason', /never edited/],
  ['is not deleted', 'DELETE FROM order_check_override', /never deleted/],
])('an override %s', (_title, sql, reason) => {
  migrate(connection, migrations.slice(0, 2))
  override()
  const before = connection.prepare('SELECT * FROM order_check_override').all()
  expect(() => connection.exec(sql)).toThrow(reason)
  expect(connection.prepare('SELECT * FROM order_check_override').all()).toEqual(before)
})

test.each([
  ['without a reason', { reason: ' ' }],
  ['without initials', { initials: '' }],
  ['of nothing', { part_key: '' }],
  ['of no stop', { code: '' }],
  ['with an id that is none', { override_id: '7' }],
  ['without a part number', { part_number: null }],
])('an override %s is refused by the layout', (_title, changed) => {
  migrate(connection, migrations.slice(0, 2))
  expect(() => override(changed)).toThrow(/constraint failed/)
  expect(connection.prepare('SELECT count(*) FROM order_check_override').pluck().get()).toBe(0)
})
