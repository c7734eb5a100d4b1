import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { type Bindable, inOneRead, inTransaction } from '../../../electron/database/handles.ts'
import { inMemory, openDatabase } from '../../../electron/database/open-database.ts'

const row = z.object({ answer: z.string() })

function check(given: { sql: string; bound: readonly Bindable[] }, expected: string): void {
  const database = openDatabase(inMemory)
  expect(database.row(row, given.sql, ...given.bound)?.answer).toBe(expected)
  expect(database.rows(row, given.sql, ...given.bound)).toEqual([{ answer: expected }])
  expect([...database.tuples<[string]>(given.sql, ...given.bound)]).toEqual([[expected]])
  database.close()
}

test('values stand at plain places in their order', () => {
  check({ sql: "SELECT ? || '-' || ? AS answer", bound: ['left', 'right'] }, 'left-right')
})

test('a numbered place takes its value however often it is named', () => {
  check({ sql: "SELECT ?2 || '-' || ?1 || '-' || ?2 AS answer", bound: ['a', 'b'] }, 'b-a-b')
})

const numbered = `WITH RECURSIVE counted (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM counted WHERE n < 3)
  SELECT n FROM counted`

test('the same rows can be read while somebody is still reading them', () => {
  const database = openDatabase(inMemory)
  const pairs = []
  for (const [outer] of database.tuples<[number]>(numbered))
    for (const [inner] of database.tuples<[number]>(numbered)) pairs.push([outer, inner])
  expect(pairs).toHaveLength(9)
  expect(pairs.at(-1)).toEqual([3, 3])
  database.close()
})

test('rows that somebody stopped reading are read from the start the next time', () => {
  const database = openDatabase(inMemory)
  for (const [n] of database.tuples<[number]>(numbered)) if (n === 2) break
  expect([...database.tuples<[number]>(numbered)]).toEqual([[1], [2], [3]])
  database.close()
})

const versionRow = z.object({ version: z.int() })
const readVersion = 'SELECT version FROM catalogue_state'

test('in one read, what another program writes meanwhile is not seen; afterwards it is', () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-handles-'))
  const file = path.join(folder, 'shop.tallyplate')
  const [here, other] = [openDatabase(file), openDatabase(file)]
  try {
    const versions = inOneRead(here, () => {
      const before = here.row(versionRow, readVersion)?.version
      inTransaction(other, writable => writable.run('UPDATE catalogue_state SET version = version + 1'))
      return [before, here.row(versionRow, readVersion)?.version]
    })
    expect(versions).toEqual([0, 0])
    expect(here.row(versionRow, readVersion)?.version).toBe(1)
  } finally {
    here.close()
    other.close()
    rmSync(folder, { recursive: true, force: true })
  }
})

test('a read that fails leaves no read open, and one inside a transaction belongs to it', () => {
  const database = openDatabase(inMemory)
  expect(() =>
    inOneRead(database, () => {
      throw new Error('no such part')
    }),
  ).toThrow('no such part')
  expect(database.connection.inTransaction).toBe(false)
  inTransaction(database, writable => {
    writable.run('UPDATE catalogue_state SET version = 7')
    expect(inOneRead(database, () => database.row(versionRow, readVersion)?.version)).toBe(7)
    expect(database.connection.inTransaction).toBe(true)
  })
  database.close()
})
