import { existsSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { copyBeforeMigration, copyDatabase } from '../../../electron/database/backup.ts'
import { newestLayout } from '../../../electron/database/migrate.ts'
import { openDatabase } from '../../../electron/database/open-database.ts'
import { restoreDatabase } from '../../../electron/database/restore-database.ts'
import { Refusal } from '../../../electron/requests/refusal.ts'
import { dumpOf } from '../../builders/dump-database.ts'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-backup-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

test('a copy of a whole shop holds every row, and put back in another place still does', async () => {
  const { database, load } = openTestCatalogue()
  await load(smallCatalogue)
  const copy = path.join(folder, 'copy.sqlite')
  const file = path.join(folder, 'shop.sqlite')
  expect(copyDatabase(database.connection, copy)).toBe(statSync(copy).size)
  expect(readdirSync(folder)).toEqual(['copy.sqlite'])
  restoreDatabase({ copy, file, now: new Date('2026-11-23T09:00:00Z') })
  const restored = openDatabase(file)
  expect(dumpOf(restored)).toEqual(dumpOf(database))
  restored.close()
  database.close()
})

test('a copy leaves out what is being written at that moment', () => {
  const file = path.join(folder, 'shop.sqlite')
  const [reader, writer] = [openDatabase(file), openDatabase(file)]
  writer.run('BEGIN IMMEDIATE')
  writer.run("INSERT INTO brand (name, name_key) VALUES ('Ostrel', 'OSTREL')")
  const copy = path.join(folder, 'copy.sqlite')
  copyDatabase(reader.connection, copy)
  writer.run('COMMIT')
  const copied = new Database(copy, { readonly: true })
  expect(copied.prepare('SELECT count(*) FROM brand').pluck().get()).toBe(0)
  copied.close()
  reader.close()
  writer.close()
})

test('a file that is there is never written over', () => {
  const { database } = openTestCatalogue()
  const copy = path.join(folder, 'letters.txt')
  writeFileSync(copy, 'dear customer')
  expect(() => copyDatabase(database.connection, copy)).toThrow(
    new Refusal({ code: 'file-exists', file: copy }),
  )
  expect(statSync(copy).size).toBe(13)
})

test('a copy that cannot be written is refused, and nothing is left of it', () => {
  const { database } = openTestCatalogue()
  const copy = path.join(folder, 'nowhere', 'copy.sqlite')
  expect(() => copyDatabase(database.connection, copy)).toThrow(Refusal)
  expect(readdirSync(folder)).toEqual([])
})

test('before its layout changes, a file is copied beside itself, once', () => {
  const file = path.join(folder, 'shop.sqlite')
  const database = openDatabase(file)
  const copy = `${file}.layout-${newestLayout}`
  copyBeforeMigration(database.connection, file)
  const { mtimeMs } = statSync(copy)
  copyBeforeMigration(database.connection, file)
  expect(existsSync(copy)).toBe(true)
  expect(statSync(copy).mtimeMs).toBe(mtimeMs)
  database.close()
})
