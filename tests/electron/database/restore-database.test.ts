import { createHash } from 'node:crypto'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { z } from 'zod'
import type { DatabaseHandle } from '../../../electron/database/handles.ts'
import { openDatabase } from '../../../electron/database/open-database.ts'
import { restoreDatabase } from '../../../electron/database/restore-database.ts'
import { Refusal } from '../../../electron/requests/refusal.ts'

let folder: string
let file: string
let copy: string
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-restore-'))
  file = path.join(folder, 'shop.sqlite')
  copy = path.join(folder, 'copy.sqlite')
  makeShop(file, 7)
  makeShop(copy, 3)
})
afterEach(() => rmSync(folder, { recursive: true }))

const now = new Date('2026-11-25T09:30:00Z')

function makeShop(target: string, version: number): void {
  const database = openDatabase(target)
  database.run('UPDATE catalogue_state SET version = ?', version)
  database.close()
}

function versionOf(database: DatabaseHandle): number | undefined {
  return database.row(z.object({ version: z.int() }), 'SELECT version FROM catalogue_state')?.version
}

function versionIn(target: string): number | undefined {
  const database = openDatabase(target)
  try {
    return versionOf(database)
  } finally {
    database.close()
  }
}

function checkRefused(code: string): void {
  const before = fingerprintFolder()
  const refused = () => restoreDatabase({ copy, file, now })
  expect(refused).toThrow(Refusal)
  expect(refused).toThrow(code)
  expect(fingerprintFolder()).toEqual(before)
}

function fingerprintFolder(): string[] {
  return readdirSync(folder).map(name => {
    const content = readFileSync(path.join(folder, name))
    return `${name} ${createHash('sha256').update(content).digest('hex')}`
  })
}

test('the copy takes the file’s place, and the file is kept beside it', () => {
  const restored = restoreDatabase({ copy, file, now })
  expect(restored.kept).toBe(`${file}.before-restore-20261125T093000Z`)
  expect(versionIn(file)).toBe(3)
  expect(versionIn(restored.kept ?? '')).toBe(7)
  expect(versionIn(copy)).toBe(3)
  expect(existsSync(`${file}.incoming`)).toBe(false)
})

test('where no file stood, the copy is put and nothing is kept', () => {
  rmSync(file)
  expect(restoreDatabase({ copy, file, now }).kept).toBeNull()
  expect(versionIn(file)).toBe(3)
})

test('what a stopped program left in the log is kept with the file', () => {
  const open = openDatabase(file)
  open.run('UPDATE catalogue_state SET version = 8')
  // As a power cut leaves it: the log beside the file, and nobody who has it open.
  for (const ending of ['', '-wal']) writeFileSync(`${copy}.cut${ending}`, readFileSync(file + ending))
  open.close()
  const cut = `${copy}.cut`
  const { kept } = restoreDatabase({ copy, file: cut, now })
  expect(versionIn(cut)).toBe(3)
  expect(versionIn(kept ?? '')).toBe(8)
})

test('a damaged file is replaced, and kept as it is', () => {
  writeFileSync(file, 'no database at all')
  const { kept } = restoreDatabase({ copy, file, now })
  expect(versionIn(file)).toBe(3)
  expect(readFileSync(kept ?? '', 'utf8')).toBe('no database at all')
})

test('a file that another program has open is left alone', () => {
  const open = openDatabase(file)
  expect(versionOf(open)).toBe(7)
  const refused = () => restoreDatabase({ copy, file, now })
  expect(refused).toThrow('database-in-use')
  open.run('UPDATE catalogue_state SET version = 9')
  open.close()
  expect(versionIn(file)).toBe(9)
})

test('a copy that is not there is refused', () => {
  rmSync(copy)
  checkRefused('file-unreadable')
})

test('a copy that is no database is refused', () => {
  writeFileSync(copy, 'half a copy')
  checkRefused('copy-not-sound')
})

test('a copy that was cut short is refused', () => {
  writeFileSync(copy, readFileSync(copy).subarray(0, 20_000))
  checkRefused('copy-not-sound')
})

test('another program’s database is refused', () => {
  rmSync(copy)
  const other = new Database(copy)
  other.exec('CREATE TABLE songs (title TEXT)')
  other.close()
  checkRefused('copy-not-sound')
})

test('a copy from a newer program is refused', () => {
  const newer = new Database(copy)
  newer.pragma('user_version = 99')
  newer.close()
  checkRefused('database-from-newer-program')
})
