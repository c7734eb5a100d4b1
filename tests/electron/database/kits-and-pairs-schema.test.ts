import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { kitsAndPairs } from '../../../electron/database/migrations/0004-kits-and-pairs.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with parts and what replaces them; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(kitsAndPairs)))
  shop.exec(`
    INSERT INTO family VALUES (1, 'bearing', 'Bearing', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO part VALUES (2, '00480121', '00480121', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO supersession VALUES (1, 1, 2, 'one', NULL, NULL);`)
  migrate(shop, migrations.slice(0, migrations.indexOf(kitsAndPairs) + 1))
  shop.exec(`
    INSERT INTO kit_content VALUES (1, 2, 3);
    INSERT INTO replaced_together VALUES (1, 2, 1, 'one wears the other');
    INSERT INTO replaced_together VALUES (1, 1, 2, NULL);`)
})
afterEach(() => shop.close())

test('it is the fourth layout, and what the one before held is all there', () => {
  expect(migrations.indexOf(kitsAndPairs)).toBe(3)
  expect(shop.prepare('SELECT part_number FROM part').pluck().all()).toEqual(['1E5', '00480121'])
  expect(shop.prepare('SELECT new_part_id FROM supersession').pluck().all()).toEqual([2])
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

const cases: readonly (readonly [title: string, sql: string, reason: RegExp])[] = [
  ['a kit does not come in itself', 'INSERT INTO kit_content VALUES (2, 2, 1)', /CHECK/],
  ['a part is in a kit once', 'INSERT INTO kit_content VALUES (1, 2, 1)', /UNIQUE/],
  ['a kit holds none of nothing', 'INSERT INTO kit_content VALUES (2, 1, 0)', /CHECK/],
  ['a kit is a part', 'INSERT INTO kit_content VALUES (7, 1, 1)', /FOREIGN KEY/],
  ['what comes in a kit is a part', 'INSERT INTO kit_content VALUES (1, 7, 1)', /FOREIGN KEY/],
  ['a pair of one is none', 'INSERT INTO replaced_together VALUES (2, 2, 1, NULL)', /CHECK/],
  ['a companion is named once', 'INSERT INTO replaced_together VALUES (1, 2, 4, NULL)', /UNIQUE/],
  ['an empty reason is none', "INSERT INTO replaced_together VALUES (2, 1, 1, '')", /CHECK/],
  ['a companion is a part', 'INSERT INTO replaced_together VALUES (2, 7, 1, NULL)', /FOREIGN KEY/],
]
test.each(cases)('%s', (_title, sql, reason) => {
  const all = () =>
    ['kit_content', 'replaced_together'].map(table => shop.prepare(`SELECT * FROM ${table}`).all())
  const before = all()
  expect(() => shop.exec(sql)).toThrow(reason)
  expect(all()).toEqual(before)
})
