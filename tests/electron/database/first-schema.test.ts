import { expect, test } from 'vitest'
import type { DatabaseHandle } from '../../../electron/database/handles.ts'
import { inMemory, openDatabase } from '../../../electron/database/open-database.ts'

const movement = `INSERT INTO movement (movement_id, kind, part_id, quantity, from_location_id, to_location_id, recorded_at,
    device, initials, reason, reverses, outside) VALUES`
const stamp = "'2026-11-23T09:00:00Z', 'counter', 'AB', 'test'"

/** A shop with one part, two places and one receipt. */
function openShop(): DatabaseHandle {
  const database = openDatabase(inMemory)
  database.connection.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO location VALUES (1, 'shop', 'shop', 'Shop'), (2, 'van-1', 'van', 'Van 1');
    ${movement} ('${idOf(1)}', 'receipt', 1, 5, NULL, 1, ${stamp}, NULL, 'count')`)
  return database
}

function idOf(serial: number): string {
  return `0190a000-0000-7000-8000-${String(serial).padStart(12, '0')}`
}

/** The statement is refused by the layout itself, whatever code would run it, and the ledger stays as it was. */
function check(sql: string, reason: RegExp) {
  const database = openShop()
  const ledger = () => [...database.tuples('SELECT * FROM movement')]
  const before = ledger()
  expect(() => database.connection.exec(sql)).toThrow(reason)
  expect(ledger()).toEqual(before)
  database.close()
}

const cases: readonly (readonly [title: string, sql: string, reason: RegExp])[] = [
  [
    'a movement is not edited',
    'UPDATE movement SET quantity = 4',
    /never edited: append one that reverses it/,
  ],
  ['a movement is not deleted', 'DELETE FROM movement', /never deleted: append one that reverses it/],
  [
    'a movement moves something',
    `${movement} ('${idOf(2)}', 'receipt', 1, 0, NULL, 1, ${stamp}, NULL, 'count')`,
    /CHECK.*quantity > 0/,
  ],
  [
    'a movement is not of half a part',
    `${movement} ('${idOf(2)}', 'receipt', 1, 1.5, NULL, 1, ${stamp}, NULL, 'count')`,
    /cannot store REAL/,
  ],
  [
    'a movement has a place of ours on one side',
    `${movement} ('${idOf(2)}', 'issue', 1, 1, NULL, NULL, ${stamp}, NULL, 'count')`,
    /CHECK/,
  ],
  [
    'a transfer has both places',
    `${movement} ('${idOf(2)}', 'transfer', 1, 1, 1, NULL, ${stamp}, NULL, NULL)`,
    /CHECK/,
  ],
  [
    'a transfer goes somewhere else',
    `${movement} ('${idOf(2)}', 'transfer', 1, 1, 1, 1, ${stamp}, NULL, NULL)`,
    /CHECK/,
  ],
  [
    'a receipt comes from outside',
    `${movement} ('${idOf(2)}', 'receipt', 1, 1, 1, 2, ${stamp}, NULL, 'count')`,
    /CHECK/,
  ],
  [
    'a movement is of a part that there is',
    `${movement} ('${idOf(2)}', 'receipt', 99, 1, NULL, 1, ${stamp}, NULL, 'count')`,
    /FOREIGN KEY/,
  ],
  [
    'a movement is recorded once',
    `${movement} ('${idOf(1)}', 'receipt', 1, 1, NULL, 1, ${stamp}, NULL, 'count')`,
    /UNIQUE/,
  ],
  [
    'a movement is reversed once',
    `${movement} ('${idOf(2)}', 'adjustment', 1, 5, 1, NULL, ${stamp}, '${idOf(1)}', 'count'), ('${idOf(3)}', 'adjustment', 1, 5, 1, NULL, ${stamp}, '${idOf(1)}', 'count')`,
    /UNIQUE/,
  ],
  ['a part with movements is not taken away', 'DELETE FROM part', /FOREIGN KEY/],
  [
    'a fitment is of a family or of a part',
    "INSERT INTO source VALUES (1, 'list'); INSERT INTO fitment_terms (says, family_id, part_id, source_id) VALUES ('includes', 1, 1, 1)",
    /CHECK/,
  ],
  [
    'a part does not replace itself',
    "INSERT INTO supersession (old_part_id, new_part_id, way) VALUES (1, 1, 'one')",
    /CHECK/,
  ],
]

test.each(cases)('%s', (_title, sql, reason) => check(sql, reason))

test('a number keeps its leading zeros and its letter E', () => {
  const database = openShop()
  database.run("INSERT INTO part VALUES (2, '00480121', '00480121', 1, '', 'pattern', '', NULL)")
  expect([...database.tuples('SELECT part_number FROM part ORDER BY part_id')]).toEqual([
    ['1E5'],
    ['00480121'],
  ])
  database.close()
})
