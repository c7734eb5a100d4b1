import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { jobsAndReturns } from '../../../electron/database/migrations/0013-jobs-and-returns.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a job of a file and a movement for it; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(jobsAndReturns)))
  shop.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO location VALUES (1, 'van-1', 'van', 'Van 1');
    INSERT INTO job VALUES ('J1', '2026-11-20', 1, NULL, NULL, 'does not drain', 1);
    INSERT INTO job_family VALUES ('J1', 1);
    INSERT INTO movement (movement_id, kind, part_id, quantity, from_location_id, outside, recorded_at, device, initials,
      reason, reference)
    VALUES ('${idOf(9)}', 'issue', 1, 1, 1, 'job', '${when}', 'counter', 'AB', 'fitted', 'J1');`)
  migrate(shop, migrations.slice(0, migrations.indexOf(jobsAndReturns) + 1))
})
afterEach(() => shop.close())

const when = '2026-11-23T09:00:00.000Z'
const stamp = `'${when}', 'counter', 'AB'`

function idOf(serial: number): string {
  return `0190a000-0000-7000-8000-${String(serial).padStart(12, '0')}`
}

test('the jobs of the layout before are as they were', () => {
  expect(shop.prepare('SELECT job, symptom, finished_first_visit FROM job').all()).toEqual([
    { job: 'J1', symptom: 'does not drain', finished_first_visit: 1 },
  ])
  expect(shop.pragma('foreign_key_check')).toEqual([])
})

test('what is written of a job is of a job that there is, and is never edited or deleted', () => {
  const write = (job: string) =>
    shop.exec(`INSERT INTO job_sheet (job_sheet_id, job, opens, date, model, symptom, recorded_at, device, initials)
      VALUES ('${idOf(1)}', '${job}', 1, '2026-11-23', 'OW 45', 'leaks', ${stamp})`)
  expect(() => write('J2')).toThrow(/FOREIGN KEY/)
  write('J1')
  expect(() => shop.exec("UPDATE job_sheet SET symptom = 'none'")).toThrow(/never edited/)
  expect(() => shop.exec('DELETE FROM job_sheet')).toThrow(/never deleted/)
})

test('a need names a family or a part, not both and not neither', () => {
  const need = (family: string, part: string) =>
    shop.exec(`INSERT INTO job_need VALUES ('${idOf(2)}', 'J1', ${family}, ${part}, 1, ${stamp})`)
  expect(() => need('NULL', 'NULL')).toThrow(/CHECK/)
  expect(() => need('1', '1')).toThrow(/CHECK/)
  need('1', 'NULL')
})

test('a visit that did not finish the job says why', () => {
  const visit = (outcome: string, why: string) =>
    shop.exec(
      `INSERT INTO job_visit VALUES ('${idOf(3)}', 'J1', '${outcome}', ${why}, NULL, NULL, NULL, ${stamp})`,
    )
  expect(() => visit('not-finished', 'NULL')).toThrow(/CHECK/)
  expect(() => visit('gone', "'no-access'")).toThrow(/CHECK/)
  visit('not-finished', "'no-access'")
})

test('a return rests on the one movement that brought it', () => {
  const back = (id: number, movement: number) =>
    shop.exec(`INSERT INTO part_return VALUES ('${idOf(id)}', 'unused', '${idOf(movement)}', NULL, ${stamp})`)
  expect(() => back(4, 8)).toThrow(/FOREIGN KEY/)
  back(4, 9)
  expect(() => back(5, 9)).toThrow(/UNIQUE/)
  expect(() => shop.exec('DELETE FROM part_return')).toThrow(/never deleted/)
})
