import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { applicationId, migrate, newestLayout, readLayout } from '../../../electron/database/migrate.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'
import { openDatabase } from '../../../electron/database/open-database.ts'
import { Refusal } from '../../../electron/requests/refusal.ts'
import type { Problem } from '../../../shared-schemas/problem.ts'
import { fingerprintFolder } from '../../builders/in-a-folder.ts'

let folder: string
let file: string
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-open-'))
  file = path.join(folder, 'shop.sqlite')
})
afterEach(() => rmSync(folder, { recursive: true }))

test('a file that is not there is made in the newest layout, marked as ours, with every pragma as spelled out', () => {
  const database = openDatabase(file)
  const pragma = (name: string) => database.connection.pragma(name, { simple: true })
  expect(pragma('user_version')).toBe(newestLayout)
  expect(pragma('application_id')).toBe(applicationId)
  expect(pragma('journal_mode')).toBe('wal')
  expect(pragma('synchronous')).toBe(2)
  expect(pragma('foreign_keys')).toBe(1)
  expect(pragma('integrity_check')).toBe('ok')
  database.close()
})

test('every table is STRICT, so that a part number cannot become a number', () => {
  const database = openDatabase(file)
  const loose = database.connection
    .prepare(
      "SELECT name FROM pragma_table_list WHERE type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
    )
    .all()
  expect(loose).toEqual([])
  database.close()
})

test('opening again changes no table and keeps the rows', () => {
  const first = openDatabase(file)
  first.run("INSERT INTO brand (name, name_key) VALUES ('Ostrel', 'OSTREL')")
  first.close()
  const second = openDatabase(file)
  expect([...second.tuples('SELECT name FROM brand')]).toEqual([['Ostrel']])
  expect(readdirSync(folder).filter(name => name.includes('layout'))).toEqual([])
  second.close()
})

test('the steps of migrating are run in order, once each, and together or not at all', () => {
  const connection = new Database(':memory:')
  const steps = ['CREATE TABLE one (a) STRICT', 'ALTER TABLE one RENAME TO two']
  expect(() => migrate(connection, steps)).toThrow()
  expect(readLayout(connection)).toBe(0)
  migrate(connection, ['CREATE TABLE one (a TEXT) STRICT'])
  migrate(connection, ['CREATE TABLE one (a TEXT) STRICT', 'ALTER TABLE one RENAME TO two'])
  expect(readLayout(connection)).toBe(2)
  expect(() => migrate(connection, [...steps, 'ALTER TABLE two RENAME TO three', 'no SQL at all'])).toThrow()
  expect(readLayout(connection)).toBe(2)
  expect(connection.prepare('SELECT name FROM sqlite_schema').pluck().all()).toEqual(['two'])
  connection.close()
})

describe('a file that is not for us is refused in plain words and left byte for byte', () => {
  const cases: readonly (readonly [title: string, make: () => void, problem: Partial<Problem>])[] = [
    [
      'written by a newer program',
      () => writeDatabase({ layout: newestLayout + 1, application: applicationId }),
      { code: 'database-from-newer-program', found: newestLayout + 1, known: newestLayout },
    ],
    [
      'of another program',
      () => writeDatabase({ layout: 0, application: 0x12345678 }),
      { code: 'database-not-ours' },
    ],
    [
      'no database at all',
      () => writeFileSync(file, 'a letter, not a database, but long enough for a header '.repeat(20)),
      { code: 'database-damaged' },
    ],
    ['damaged inside', writeDamaged, { code: 'database-damaged' }],
    ['cut short', writeCutShort, { code: 'database-damaged' }],
    ['a folder', () => {}, { code: 'database-unopenable' }],
  ]
  test.each(cases)('%s', (title, make, problem) => {
    make()
    const target = title === 'a folder' ? folder : file
    const before = fingerprintFolder(folder)
    expect(problemOf(() => openDatabase(target))).toMatchObject(problem)
    expect(fingerprintFolder(folder)).toEqual(before)
  })
})

test('a file in a folder that is not there is refused, and no folder made', () => {
  const target = path.join(folder, 'nowhere', 'shop.sqlite')
  expect(problemOf(() => openDatabase(target))).toMatchObject({
    code: 'database-unopenable',
    why: 'its folder is not there',
  })
  expect(readdirSync(folder)).toEqual([])
})

test('a file that another program is writing is refused as busy', () => {
  openDatabase(file).close()
  const other = new Database(file)
  other.pragma('locking_mode = EXCLUSIVE')
  other.exec('BEGIN EXCLUSIVE')
  // Waiting takes as long as better-sqlite3 waits by default, 5 s.
  expect(problemOf(() => openDatabase(file))).toEqual({ code: 'database-busy', file })
  other.close()
}, 20_000)

function problemOf(attempt: () => unknown): Problem {
  try {
    attempt()
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.problem
    throw thrown
  }
  throw new Error('this should have been refused, and was done')
}

function writeDatabase({ layout, application }: { layout: number; application: number }): void {
  const connection = new Database(file)
  connection.exec('CREATE TABLE thing (a TEXT) STRICT; INSERT INTO thing VALUES (1)')
  connection.pragma(`user_version = ${layout}`)
  connection.pragma(`application_id = ${application}`)
  connection.close()
}

/** A sound file of ours whose pages from the second on are overwritten. */
function writeDamaged(): void {
  writeSound()
  const bytes = readFileSync(file)
  bytes.fill(0x5a, 4096, bytes.length - 4096)
  writeFileSync(file, bytes)
}

function writeCutShort(): void {
  writeSound()
  const bytes = readFileSync(file)
  writeFileSync(file, bytes.subarray(0, Math.floor(bytes.length / 2 / 4096) * 4096))
}

function writeSound(): void {
  const connection = new Database(file)
  migrate(connection, migrations)
  connection.close()
}
