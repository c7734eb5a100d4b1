import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { supplierLayouts } from '../../../electron/database/migrations/0007-supplier-layouts.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a part; then brought to this one, with a layout of a supplier's file. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  const at = migrations.indexOf(supplierLayouts)
  expect(at).toBeGreaterThan(3)
  migrate(shop, migrations.slice(0, at))
  shop.exec(`
    INSERT INTO family VALUES (1, 'bearing', 'Bearing', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);`)
  migrate(shop, migrations.slice(0, at + 1))
  shop.exec(`
    INSERT INTO layout VALUES (1, 'Harrow', 'harrow', 'offers.csv', 'windows-1252', ';', NULL, 1, 'long', NULL, '2026-11-23', 'mk');
    INSERT INTO layout_heading VALUES (1, 0, 'Preis', 0);
    INSERT INTO layout_column VALUES (1, 0, 'price', 'Preis', NULL, ',', 0, NULL);
    INSERT INTO layout_word VALUES (1, 0, 0, 'gratis', '0');`)
})
afterEach(() => shop.close())

const tables = ['layout', 'layout_heading', 'layout_column', 'layout_word', 'layout_model_separator']
const all = () => tables.map(table => shop.prepare(`SELECT * FROM ${table}`).all())

test('what the layout before held is all there', () => {
  expect(shop.prepare('SELECT part_number FROM part').pluck().all()).toEqual(['1E5'])
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

test('what belongs to a layout goes with it', () => {
  shop.exec('DELETE FROM layout')
  expect(all()).toEqual([[], [], [], [], []])
})

const layout = (values: string) => `INSERT INTO layout VALUES (2, ${values}, '2026-11-23', '')`
const cases: readonly (readonly [title: string, sql: string, reason: RegExp])[] = [
  ['two layouts of one name', layout("'HARROW', 'harrow', 'x', NULL, NULL, NULL, 1, 'long', NULL"), /UNIQUE/],
  ['a layout without a name', layout("'', '', 'x', NULL, NULL, NULL, 1, 'long', NULL"), /CHECK/],
  ['a shape that is none', layout("'a', 'a', 'x', NULL, NULL, NULL, 1, 'round', 'b'"), /CHECK/],
  ['many models that fill nothing', layout("'a', 'a', 'x', NULL, NULL, NULL, 1, 'wide-cell', NULL"), /CHECK/],
  [
    'one model that fills a column of many',
    layout("'a', 'a', 'x', NULL, NULL, NULL, 1, 'long', 'b'"),
    /CHECK/,
  ],
  ['headings above the first row', layout("'a', 'a', 'x', NULL, NULL, NULL, 0, 'long', NULL"), /CHECK/],
  [
    'a column that is filled twice',
    "INSERT INTO layout_column VALUES (1, 1, 'price', 'x', NULL, NULL, 0, NULL)",
    /UNIQUE/,
  ],
  [
    'a column with heading and constant',
    "INSERT INTO layout_column VALUES (1, 1, 'pack', 'x', '1', NULL, 0, NULL)",
    /CHECK/,
  ],
  [
    'a column with neither',
    "INSERT INTO layout_column VALUES (1, 1, 'pack', NULL, NULL, NULL, 0, NULL)",
    /CHECK/,
  ],
  [
    'a decimal sign that is none',
    "INSERT INTO layout_column VALUES (1, 1, 'pack', 'x', NULL, ';', 0, NULL)",
    /CHECK/,
  ],
  [
    'an order that is none',
    "INSERT INTO layout_column VALUES (1, 1, 'pack', 'x', NULL, NULL, 0, 'dym')",
    /CHECK/,
  ],
  ['a word of no column', "INSERT INTO layout_word VALUES (1, 7, 0, 'a', 'b')", /FOREIGN KEY/],
  ['a heading of no layout', "INSERT INTO layout_heading VALUES (7, 0, 'a', 0)", /FOREIGN KEY/],
]
test.each(cases)('there is never %s', (_title, sql, reason) => {
  const before = all()
  expect(() => shop.exec(sql)).toThrow(reason)
  expect(all()).toEqual(before)
})
