import type Database from 'better-sqlite3'
import type { z } from 'zod'
import { Refusal } from '../requests/refusal.ts'

/** A value that SQLite can bind. Numbers must be whole or real; booleans are written as 0 and 1 by the query. */
export type Bindable = string | number | bigint | null | Uint8Array

/** What a query may do: read. Statements are prepared once per text. */
export interface ReadableDatabase {
  /** All rows, each checked by its schema as it comes out. */
  rows<Row extends z.ZodType>(row: Row, sql: string, ...bound: readonly Bindable[]): z.output<Row>[]
  /** The first row, or nothing. */
  row<Row extends z.ZodType>(row: Row, sql: string, ...bound: readonly Bindable[]): z.output<Row> | undefined
  /** Rows as plain arrays in column order, unchecked and unheaped, for reads of a whole catalogue. The caller names the tuple. */
  tuples<Tuple extends readonly unknown[]>(
    sql: string,
    ...bound: readonly Bindable[]
  ): IterableIterator<Tuple>
  /** The query plan, for the tests that name an index. */
  explain(sql: string, ...bound: readonly Bindable[]): string
}

/** Comes only from `inTransaction`, so that a write outside a transaction does not compile. */
export interface WritableDatabase extends ReadableDatabase {
  run(sql: string, ...bound: readonly Bindable[]): { readonly changes: number; readonly lastId: number }
  readonly [writable]: true
}

declare const writable: unique symbol

/** The one wrapper round better-sqlite3's connection. */
export class DatabaseHandle implements ReadableDatabase {
  readonly connection: Database.Database
  readonly #statements = new Map<string, Database.Statement>()
  /** Apart from the others, since raw() stays switched on. */
  readonly #rawStatements = new Map<string, Database.Statement>()

  constructor(connection: Database.Database) {
    this.connection = connection
  }

  rows<Row extends z.ZodType>(row: Row, sql: string, ...bound: readonly Bindable[]): z.output<Row>[] {
    return this.prepare(sql)
      .all(...inPlace(sql, bound))
      .map(found => row.parse(found))
  }

  row<Row extends z.ZodType>(
    row: Row,
    sql: string,
    ...bound: readonly Bindable[]
  ): z.output<Row> | undefined {
    const found = this.prepare(sql).get(...inPlace(sql, bound))
    return found === undefined ? undefined : row.parse(found)
  }

  tuples<Tuple extends readonly unknown[]>(
    sql: string,
    ...bound: readonly Bindable[]
  ): IterableIterator<Tuple> {
    return this.#prepareRaw(sql).iterate(...inPlace(sql, bound)) as IterableIterator<Tuple>
  }

  explain(sql: string, ...bound: readonly Bindable[]): string {
    const steps = this.connection.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...inPlace(sql, bound))
    return steps.map(step => (step as { detail: string }).detail).join('\n')
  }

  prepare(sql: string): Database.Statement {
    const known = this.#statements.get(sql)
    if (known !== undefined) return known
    const statement = this.connection.prepare(sql)
    this.#statements.set(sql, statement)
    return statement
  }

  /** A statement that somebody still reads from is left alone: they go on, and this reader gets another. */
  #prepareRaw(sql: string): Database.Statement {
    const known = this.#rawStatements.get(sql)
    if (known !== undefined && !known.busy) return known
    const statement = this.connection.prepare(sql).raw()
    this.#rawStatements.set(sql, statement)
    return statement
  }

  run(sql: string, ...bound: readonly Bindable[]): { changes: number; lastId: number } {
    const { changes, lastInsertRowid } = this.prepare(sql).run(...inPlace(sql, bound))
    return { changes, lastId: Number(lastInsertRowid) }
  }

  close(): void {
    this.connection.close()
  }
}

/** Values in the order of their places. better-sqlite3 takes `?1` for a name, so numbered places get theirs by number. */
function inPlace(sql: string, bound: readonly Bindable[]): readonly unknown[] {
  if (!/\?\d/.test(sql)) return bound
  return [Object.fromEntries(bound.map((value, at) => [at + 1, value]))]
}

/**
 * Runs work that only reads, on the database as it stands now: what another program writes meanwhile is not seen.
 * Each statement by itself would also take and give back SQLite's locks, which costs more than most of them do.
 */
export function inOneRead<Value>(
  database: DatabaseHandle,
  read: () => Value extends Promise<unknown> ? never : Value,
): Value {
  if (database.connection.inTransaction) return read()
  database.run('BEGIN')
  try {
    return read()
  } finally {
    database.run('COMMIT')
  }
}

/**
 * Runs `work` in one transaction that takes the write lock at once: all of it is kept, or on a throw none.
 * `work` is synchronous, because anything that waited would let another request's writes into this transaction.
 */
export function inTransaction<Value>(
  database: DatabaseHandle,
  work: (writable: WritableDatabase) => Value extends Promise<unknown> ? never : Value,
): Value {
  const transaction = database.connection.transaction(() => work(asWritable(database)))
  return refusingBusy(database, () => transaction.immediate() as Value)
}

/**
 * Runs long work that waits between its steps in one transaction. Only for a handle that nobody else uses
 * meanwhile: whatever is asked of it would fall inside.
 */
export async function inLongTransaction<Value>(
  own: DatabaseHandle,
  work: (writable: WritableDatabase) => Promise<Value>,
): Promise<Value> {
  refusingBusy(own, () => own.run('BEGIN IMMEDIATE'))
  try {
    const value = await work(asWritable(own))
    own.run('COMMIT')
    return value
  } catch (thrown) {
    if (own.connection.inTransaction) own.run('ROLLBACK')
    throw thrown
  }
}

/** Another program that writes for longer than we wait is no defect of ours, and the person can do something about it. */
function refusingBusy<Value>({ connection }: DatabaseHandle, begin: () => Value): Value {
  try {
    return begin()
  } catch (thrown) {
    const isBusy = thrown instanceof Error && 'code' in thrown && thrown.code === 'SQLITE_BUSY'
    throw isBusy ? new Refusal({ code: 'database-busy', file: connection.name }) : thrown
  }
}

/** The handle has every method of `WritableDatabase`; the brand exists in types only, and only here inside a transaction. */
function asWritable(database: DatabaseHandle): WritableDatabase {
  return database as unknown as WritableDatabase
}
