import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { faultGuide } from '../../../electron/database/migrations/0016-fault-guide.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a family and a job; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(faultGuide)))
  shop.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO job (job, date, symptom) VALUES ('J1', '2026-01-05', 'sings');`)
  migrate(shop, migrations.slice(0, migrations.indexOf(faultGuide) + 1))
})
afterEach(() => shop.close())

test('what the shop had stays, and the guide is empty', () => {
  expect(shop.prepare('SELECT family FROM family').all()).toEqual([{ family: 'pump' }])
  expect(shop.prepare('SELECT job FROM job').all()).toEqual([{ job: 'J1' }])
  expect(shop.prepare('SELECT count(*) AS n FROM fault').get()).toEqual({ n: 0 })
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

test('work that needs a licence says which, and has no steps', () => {
  const addCause = (endsIn: string, licensedFor: string | null, advice: string) =>
    shop
      .prepare(
        `INSERT INTO fault (appliance_type, symptom, cause, also_said, ends_in, licensed_for, weight, advice)
         VALUES ('hob', 'flame goes out', 'tap worn', '', ?, ?, 1, ?)`,
      )
      .run(endsIn, licensedFor, advice)
  expect(() => addCause('licensed', null, '')).toThrow(/CHECK/)
  expect(() => addCause('no-part', 'gas', '')).toThrow(/CHECK/)
  expect(() => addCause('licensed', 'gas', 'Undo the tap')).toThrow(/CHECK/)
  addCause('licensed', 'gas', '')
})

test('a check carries no hazard of licensed work, and no outcome is certain', () => {
  shop.exec(`INSERT INTO fault_check (fault_check_id, appliance_type, check_name, symptoms, how, minutes, tools, competence)
    VALUES (1, 'hob', 'look', '', 'Look at it', 1, '', 'anyone')`)
  const addHazard = (hazard: string) => shop.exec(`INSERT INTO fault_check_hazard VALUES (1, '${hazard}')`)
  for (const hazard of ['gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring'])
    expect(() => addHazard(hazard)).toThrow(/CHECK/)
  addHazard('hot')
  expect(() => shop.exec("INSERT INTO fault_check_outcome VALUES (1, 0, 'lit', 1)")).toThrow(/CHECK/)
  shop.exec("INSERT INTO fault_check_outcome VALUES (1, 0, 'lit', 0.9)")
})
