import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { decodeIds } from '../../../electron/catalogue/fitments/id-lists.ts'
import { migrate } from '../../../electron/database/migrate.ts'
import { compactFitments } from '../../../electron/database/migrations/0005-compact-fitments.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** Gaps of one to four bytes, and more models than one piece of the new layout holds. */
const modelIds = [
  ...Array.from({ length: 450 }, (_, at) => at + 1),
  ...[600, 727, 855, 20_000, 36_383, 52_767, 2_200_000, 4_297_151, 6_394_303, 60_000_000],
]
const termsIds = [1, 2, 200, 20_000, 3_000_000]
const saidOf = (termsId: number) =>
  modelIds.filter((id, at) => termsId === 1 || (termsId === 200 ? at === 7 : (id + at + termsId) % 3 === 0))
const changes = [
  [1, 2, 1, 'withdrawn'],
  [1, 200, 1, 'withdrawn'],
  [1, 200, 2, 'said'],
  [60_000_000, 3_000_000, 1, 'said'],
  [60_000_000, 3_000_000, 1, 'withdrawn'],
] as const

/** A shop of the layout before with fitments and changes of them; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  const at = migrations.indexOf(compactFitments)
  migrate(shop, migrations.slice(0, at))
  shop.exec(`
    INSERT INTO brand VALUES (1, 'Ostrel', 'OSTREL');
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO source VALUES (1, 'list');
    INSERT INTO load_run VALUES (1, '2026-11-23', '/lists', NULL, 1, 0, 0, 0, 1);
    INSERT INTO load_run VALUES (2, '2026-11-24', '/lists', NULL, 1, 0, 0, 0, 0)`)
  for (const id of modelIds)
    shop
      .prepare(
        "INSERT INTO model (model_id, brand_id, model_number, model_key, appliance_type) VALUES (?, 1, ?, ?, '')",
      )
      .run(id, `OW ${id}`, `OW${id}`)
  for (const id of termsIds) {
    shop
      .prepare(
        "INSERT INTO fitment_terms (terms_id, says, family_id, position, source_id) VALUES (?, 'includes', 1, ?, 1)",
      )
      .run(id, String(id))
    for (const model of saidOf(id)) shop.prepare('INSERT INTO fitment VALUES (?, ?)').run(model, id)
  }
  for (const change of changes) shop.prepare('INSERT INTO fitment_change VALUES (?, ?, ?, ?)').run(...change)
  migrate(shop, migrations.slice(0, at + 1))
})
afterEach(() => shop.close())

interface Row {
  readonly id: number
  readonly count: number
  readonly change: string
  readonly run: number
  readonly list: Uint8Array
}

test('what was said is said, from the model and from the terms', () => {
  const byTerms = shop
    .prepare<[], Row>(
      'SELECT terms_id AS id, first_model_id AS run, models AS count, more_models AS list FROM fitment_by_terms ORDER BY 1, 2',
    )
    .all()
  const said = new Map<number, number[]>()
  for (const { id, run: first, list, count } of byTerms) {
    const models = [first, ...decodeIds(list, first)]
    expect(models).toHaveLength(count)
    said.set(id, [...(said.get(id) ?? []), ...models])
  }
  expect([...said]).toEqual(termsIds.map(id => [id, saidOf(id)]))
  expect(byTerms.filter(({ id }) => id === 1).length).toBeGreaterThan(1)
  const byModel = shop
    .prepare<[], Row>('SELECT model_id AS id, terms AS list FROM fitment_by_model ORDER BY 1')
    .all()
  expect(byModel.map(({ id, list }) => [id, decodeIds(list)])).toEqual(
    modelIds.map(id => [id, termsIds.filter(terms => saidOf(terms).includes(id))]),
  )
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

test('every change is kept with its run', () => {
  const kept = shop
    .prepare<[], Row>(
      'SELECT model_id AS id, load_run_id AS run, change, terms AS list FROM fitment_change ORDER BY 1, 2, 3',
    )
    .all()
  expect(kept.map(({ id, run, change, list }) => [id, run, change, decodeIds(list)])).toEqual([
    [1, 1, 'withdrawn', [2, 200]],
    [1, 2, 'said', [200]],
    [60_000_000, 1, 'said', [3_000_000]],
    [60_000_000, 1, 'withdrawn', [3_000_000]],
  ])
})

/** Refused by the layout itself, whatever code would run it. */
const refused: readonly (readonly [title: string, sql: string, reason: RegExp])[] = [
  [
    'a fitment is of a model that is there',
    "INSERT INTO fitment_by_model VALUES (5000, x'01')",
    /FOREIGN KEY/,
  ],
  [
    'a fitment has terms that are there',
    "INSERT INTO fitment_by_terms VALUES (5000, 1, 1, x'')",
    /FOREIGN KEY/,
  ],
  [
    'a model of which nothing is said has no row',
    "UPDATE fitment_by_model SET terms = x'' WHERE model_id = 1",
    /CHECK/,
  ],
  ['a change belongs to a run', "INSERT INTO fitment_change VALUES (2, 9, 'said', x'01')", /FOREIGN KEY/],
  [
    'a change is never edited',
    "UPDATE fitment_change SET change = 'said'",
    /what was recorded is never edited/,
  ],
  ['a change is never deleted', 'DELETE FROM fitment_change', /what was recorded is never deleted/],
]
test.each(refused)('%s', (_title, sql, reason) => {
  expect(() => shop.transaction(() => shop.exec(sql))()).toThrow(reason)
})

test('a shop without fitments is brought over too', () => {
  const empty = new Database(':memory:')
  migrate(empty, migrations.slice(0, migrations.indexOf(compactFitments) + 1))
  expect(empty.prepare('SELECT count(*) FROM fitment_by_terms').pluck().get()).toBe(0)
  empty.close()
})
