import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { faultFindings } from '../../../electron/database/migrations/0017-fault-findings.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a job and a guide; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(faultFindings)))
  shop.exec(`
    INSERT INTO job VALUES ('J1', '2026-11-20', NULL, NULL, NULL, 'does not drain', 1);
    INSERT INTO fault (appliance_type, symptom, cause, also_said, ends_in, weight, advice)
      VALUES ('washer', 'does not drain', 'filter blocked', '', 'no-part', 3, 'Clean it.');`)
  migrate(shop, migrations.slice(0, migrations.indexOf(faultFindings) + 1))
})
afterEach(() => shop.close())

const id = '0190a000-0000-7000-8000-000000000001'
const find = (ends: string, probability: string) =>
  shop.exec(`INSERT INTO fault_finding VALUES ('${id}', 'J1', 'washer', 'does not drain', ${ends}, ${probability},
    '2026-11-23T09:00:00.000Z', 'counter', 'AB')`)

test('the jobs and the guide of the layout before are as they were', () => {
  expect(shop.prepare('SELECT job, symptom FROM job').all()).toEqual([
    { job: 'J1', symptom: 'does not drain' },
  ])
  expect(shop.prepare('SELECT cause, weight FROM fault').all()).toEqual([
    { cause: 'filter blocked', weight: 3 },
  ])
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

test('what was proposed has a probability, and what could not be told has none', () => {
  expect(() => find("'part'", 'NULL')).toThrow(/CHECK/)
  expect(() => find('NULL', '0.5')).toThrow(/CHECK/)
  expect(() => find("'part'", '1.5')).toThrow(/CHECK/)
  find('NULL', 'NULL')
})

test('what was kept is never edited or deleted, and its causes are those of a finding', () => {
  find("'no-part'", '0.9')
  shop.exec(`INSERT INTO fault_finding_cause VALUES ('${id}', 0, 'filter blocked')`)
  expect(() =>
    shop.exec(`INSERT INTO fault_finding_cause VALUES ('${id.replace(/1$/, '2')}', 0, 'x')`),
  ).toThrow(/FOREIGN KEY/)
  expect(() => shop.exec("UPDATE fault_finding SET ends_in = 'part'")).toThrow(/never edited/)
  expect(() => shop.exec('DELETE FROM fault_finding_cause')).toThrow(/never deleted/)
})

test('the findings of a job are found by its index', () => {
  const plan = shop
    .prepare('EXPLAIN QUERY PLAN SELECT min(fault_finding_id) FROM fault_finding WHERE job = ?')
    .all('J1')
  expect(JSON.stringify(plan)).toContain('USING COVERING INDEX fault_finding_of_job (job=?)')
})
