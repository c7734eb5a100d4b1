import { expect, test } from 'vitest'
import { z } from 'zod'
import type { Bindable } from '../../../electron/database/handles.ts'
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
