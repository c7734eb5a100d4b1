import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { partCodes } from '../../../electron/database/migrations/0011-part-codes.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a count going on; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(partCodes)))
  shop.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO location VALUES (1, 'van-1', 'van', 'Van 1');
    INSERT INTO stock_count VALUES ('${idOf(1)}', 1, '${when}', 'counter', 'AB');
    INSERT INTO count_reading VALUES ('${idOf(2)}', '${idOf(1)}', 1, 4, 5, '${when}', 'counter', 'AB');`)
  migrate(shop, migrations.slice(0, migrations.indexOf(partCodes) + 1))
})
afterEach(() => shop.close())

const when = '2026-11-23T09:00:00.000Z'

function idOf(serial: number): string {
  return `0190a000-0000-7000-8000-${String(serial).padStart(12, '0')}`
}

test('a reading of the layout before is a round of its own', () => {
  expect(shop.prepare('SELECT counted, book, begins FROM count_reading').all()).toEqual([
    { counted: 4, book: 5, begins: 1 },
  ])
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

test('a code is kept with its part, and never edited or deleted', () => {
  const insert = (code: string, pieces: number) =>
    shop.exec(
      `INSERT INTO part_code VALUES ('${idOf(3)}', '${code}', 1, ${pieces}, '${when}', 'counter', '')`,
    )
  expect(() => insert('', 1)).toThrow(/CHECK/)
  expect(() => insert('02000010000005', 0)).toThrow(/CHECK/)
  insert('02000010000005', 1)
  expect(() => shop.exec('UPDATE part_code SET pieces = 2')).toThrow(/never edited/)
  expect(() => shop.exec('DELETE FROM part_code')).toThrow(/never deleted/)
})

test('a reading is taken back once, and that stays', () => {
  const withdraw = (reading: number) =>
    shop.exec(`INSERT INTO count_reading_withdrawn VALUES ('${idOf(reading)}', '${when}', 'counter', '')`)
  expect(() => withdraw(9)).toThrow(/FOREIGN KEY/)
  withdraw(2)
  expect(() => withdraw(2)).toThrow(/UNIQUE/)
  expect(() => shop.exec('DELETE FROM count_reading_withdrawn')).toThrow(/never deleted/)
})
