import { expect, test } from 'vitest'
import type { DatabaseHandle } from '../../../electron/database/handles.ts'
import { verifyDatabase } from '../../../electron/database/verify-database.ts'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

/** Which checks fail once this fault is planted in a sound shop, and with what they say. */
async function check(plant: (database: DatabaseHandle) => void, expected: Readonly<Record<string, string>>) {
  const { database, load } = openTestCatalogue()
  await load(smallCatalogue)
  plant(database)
  const failed = verifyDatabase(database).filter(({ ok }) => !ok)
  expect(Object.fromEntries(failed.map(({ name, detail }) => [name, detail]))).toEqual(expected)
}

const cases: readonly (readonly [
  title: string,
  plant: (database: DatabaseHandle) => void,
  expected: Readonly<Record<string, string>>,
])[] = [
  ['a sound shop', () => {}, {}],
  [
    'a part of a family that is gone',
    database => {
      database.connection.pragma('foreign_keys = OFF')
      database.run("DELETE FROM family WHERE family = 'door-lock'")
    },
    { references: expect.stringContaining('part names a family that is not there') as string },
  ],
  [
    'more issued than was ever there',
    database => {
      database.run(
        `INSERT INTO movement (movement_id, kind, part_id, quantity, from_location_id, outside, recorded_at, device,
           initials, reason)
         SELECT '0190a000-0000-7000-8000-000000000001', 'issue', part_id, 9, location_id, 'customer', '2026-11-23T09:00:00Z', 'x', 'AB', 'job'
         FROM part, location WHERE part_number = '1E5' AND location = 'van-1'`,
      )
    },
    { 'on hand': '-7 of 1E5 in van-1' },
  ],
  [
    'a balance that its movements do not sum to',
    database => {
      database.run(
        `INSERT INTO brought_forward SELECT location_id, part_id, 3 FROM location, part
         WHERE location = 'van-1' AND part_number = '1E5'`,
      )
    },
    { 'balances brought forward': '1 are not the sum of their movements' },
  ],
  [
    'opening stock that never reached the book',
    database => {
      database.run(
        `INSERT INTO opening_stock (location_id, part_id, quantity)
         SELECT location_id, part_id, 3 FROM location, part WHERE location = 'van-1' AND part_number = 'PX 7'`,
      )
    },
    { 'opening stock': '1 lines have no movement' },
  ],
  [
    'an index that misses a row',
    database => {
      const { connection } = database
      connection.unsafeMode(true)
      connection.exec(`CREATE TABLE other AS SELECT 1 AS a;`)
      connection.pragma('writable_schema = ON')
      connection.exec(
        `UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = 'fitment_terms_of_part')
         WHERE name = 'model_of_brand'`,
      )
      connection.pragma('writable_schema = RESET')
    },
    { 'pages and indexes': expect.any(String) as string },
  ],
]

test.each(cases)('%s', (_title, plant, expected) => check(plant, expected))
