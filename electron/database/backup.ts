import { existsSync, renameSync, rmSync, statSync } from 'node:fs'
import Database from 'better-sqlite3'
import { Refusal } from '../requests/refusal.ts'
import { readLayout } from './migrate.ts'
import { wordIntegrityFault } from './word-integrity-fault.ts'

/** Writes a consistent copy into a file that is not there yet and checks it; half a copy is never left. Returns its size in bytes. */
export function copyDatabase(connection: Database.Database, target: string): number {
  if (existsSync(target)) throw new Refusal({ code: 'file-exists', file: target })
  const unfinished = `${target}.part`
  rmSync(unfinished, { force: true })
  try {
    connection.prepare('VACUUM INTO ?').run(unfinished)
    assertSound(unfinished)
    renameSync(unfinished, target)
  } catch (thrown) {
    rmSync(unfinished, { force: true })
    if (thrown instanceof Database.SqliteError)
      throw new Refusal({ code: 'file-unreadable', file: target, why: thrown.message })
    throw thrown
  }
  return statSync(target).size
}

/** Before a layout changes, the file as it was stands beside it, named by its layout. */
export function copyBeforeMigration(connection: Database.Database, file: string): void {
  const copy = `${file}.layout-${readLayout(connection)}`
  if (!existsSync(copy)) copyDatabase(connection, copy)
}

function assertSound(file: string): void {
  const copy = new Database(file, { readonly: true })
  try {
    const why = wordIntegrityFault(copy.pragma('integrity_check(1)', { simple: true }))
    if (why !== undefined) throw new Refusal({ code: 'database-damaged', file, why })
  } finally {
    copy.close()
  }
}
