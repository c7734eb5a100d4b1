import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { fitRecords } from '../../../electron/database/migrations/0003-fit-records.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a model, a part and what is said of them; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(fitRecords)))
  shop.exec(`
    INSERT INTO brand VALUES (1, 'Ostrel', 'OSTREL');
    INSERT INTO model (model_id, brand_id, model_number, model_key, appliance_type) VALUES (1, 1, 'OW 1', 'OW1', 'washer');
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO source VALUES (1, 'list');
    INSERT INTO fitment_terms (terms_id, says, part_id, source_id) VALUES (1, 'includes', 1, 1);
    INSERT INTO fitment VALUES (1, 1);`)
  migrate(shop, migrations.slice(0, migrations.indexOf(fitRecords) + 1))
  shop.exec(`
    INSERT INTO load_run VALUES (1, '${when}', '/lists', NULL, 1, 0, 0, 0, 1);
    INSERT INTO fitment_change VALUES (1, 1, 1, 'withdrawn');
    ${record(1, "'confirmed', 1, 1, 'J1', NULL, 'AB'")};
    ${record(2, "'wrong-fit', 1, 1, NULL, 'spigot too wide', 'AB'")};
    INSERT INTO fit_record_settled VALUES ('${idOf(2)}', 'wrong box', 'CD', '${when}');`)
})
afterEach(() => shop.close())

const when = '2026-11-23T09:00:00.000Z'

function idOf(serial: number): string {
  return `0190a000-0000-7000-8000-${String(serial).padStart(12, '0')}`
}

function record(serial: number, values: string): string {
  return `INSERT INTO fit_record VALUES ('${idOf(serial)}', ${values}, '${when}')`
}

test('what the layout before held is all there', () => {
  expect(shop.prepare('SELECT model_id, terms_id FROM fitment').all()).toEqual([{ model_id: 1, terms_id: 1 }])
  expect(shop.prepare('SELECT part_number FROM part').pluck().all()).toEqual(['1E5'])
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

/** Refused by the layout itself, whatever code would run it. */
const check = (sql: string, reason: RegExp) => {
  const all = () => tables.map(table => shop.prepare(`SELECT * FROM ${table}`).all())
  const before = all()
  expect(() => shop.transaction(() => shop.exec(sql))()).toThrow(reason)
  expect(all()).toEqual(before)
}
const tables = ['fit_record', 'fit_record_settled', 'load_run', 'fitment_change'] as const
const edits: Readonly<Record<(typeof tables)[number], string>> = {
  fit_record: "reason = 'another'",
  fit_record_settled: "how = 'otherwise'",
  load_run: 'added = 9',
  fitment_change: "change = 'said'",
}

test.each(tables)('%s is never edited and never deleted', table => {
  check(`UPDATE ${table} SET ${edits[table]}`, /what was recorded is never edited/)
  check(`DELETE FROM ${table}`, /what was recorded is never deleted/)
})

const cases: readonly (readonly [title: string, sql: string, reason: RegExp])[] = [
  ['a confirmed fit names its job', record(3, "'confirmed', 1, 1, NULL, NULL, 'AB'"), /CHECK/],
  ['a wrong fit has its reason', record(3, "'wrong-fit', 1, 1, 'J1', NULL, 'AB'"), /CHECK/],
  ['a record carries initials', record(3, "'wrong-fit', 1, 1, NULL, 'why', ''"), /CHECK/],
  ['a record is of a model that is there', record(3, "'confirmed', 7, 1, 'J1', NULL, 'AB'"), /FOREIGN KEY/],
  [
    'a confirmed fit is not settled',
    `INSERT INTO fit_record_settled VALUES ('${idOf(1)}', 'no need', 'CD', '${when}')`,
    /only a wrong fit is settled/,
  ],
  [
    'what is not recorded is not settled',
    `INSERT INTO fit_record_settled VALUES ('${idOf(9)}', 'no need', 'CD', '${when}')`,
    /only a wrong fit is settled/,
  ],
  [
    'a wrong fit is settled once',
    `INSERT INTO fit_record_settled VALUES ('${idOf(2)}', 'again', 'CD', '${when}')`,
    /UNIQUE/,
  ],
  [
    'terms of which a change is kept stay',
    'DELETE FROM fitment; DELETE FROM fitment_terms WHERE terms_id = 1',
    /FOREIGN KEY/,
  ],
  ['a change belongs to a run', "INSERT INTO fitment_change VALUES (1, 1, 9, 'said')", /FOREIGN KEY/],
  [
    'a run is a load or a correction',
    `INSERT INTO load_run VALUES (2, '${when}', NULL, NULL, 1, 0, 0, 0, 0)`,
    /CHECK/,
  ],
  [
    'the first fitments come once',
    `INSERT INTO load_run VALUES (2, '${when}', '/lists', NULL, 1, 0, 0, 0, 1)`,
    /UNIQUE/,
  ],
]
test.each(cases)('%s', (_title, sql, reason) => check(sql, reason))
