import { closeSync, copyFileSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import Database from 'better-sqlite3'
import { Refusal } from '../requests/refusal.ts'
import { wordFileError } from '../requests/word-file-error.ts'
import { applicationId, newestLayout, readLayout } from './migrate.ts'
import { wordIntegrityFault } from './word-integrity-fault.ts'

export interface Restoring {
  readonly copy: string
  /** Where the shop's file stands, or will. */
  readonly file: string
  readonly now: Date
}

export interface Restored {
  readonly file: string
  readonly copy: string
  /** Where the file that stood there is kept; null when none did. */
  readonly kept: string | null
}

/**
 * Puts a sound copy in the place of the shop's file, which is kept beside it. The copy itself stays where it is. A copy
 * that is not sound, or a file that another program has open, is refused and everything left as it was.
 */
export function restoreDatabase({ copy, file, now }: Restoring): Restored {
  const incoming = `${file}.incoming`
  discard(incoming)
  try {
    takeIn(copy, incoming)
    syncFile(incoming)
    const kept = existsSync(file) ? keepPresent(file, now) : null
    renameSync(incoming, file)
    return { file, copy, kept }
  } finally {
    discard(incoming)
  }
}

/**
 * Takes the copy in beside the file that it will replace and checks it there, so that nothing is left beside the copy:
 * even a reader of a database writes a log's index next to it.
 */
function takeIn(copy: string, incoming: string): void {
  copyWithLog(copy, incoming)
  let taken: Database.Database | undefined
  try {
    taken = new Database(incoming)
    refuseUnsound(taken, copy)
    // Folds the log in, so that the file is whole by itself.
    taken.pragma('journal_mode = DELETE')
  } catch (thrown) {
    throw thrown instanceof Database.SqliteError ? notSound(copy, thrown.message) : thrown
  } finally {
    taken?.close()
  }
}

function copyWithLog(copy: string, incoming: string): void {
  try {
    copyFileSync(copy, incoming)
    if (existsSync(`${copy}-wal`)) copyFileSync(`${copy}-wal`, `${incoming}-wal`)
  } catch (thrown) {
    throw new Refusal({ code: 'file-unreadable', file: copy, why: wordFileError(thrown) })
  }
}

function refuseUnsound(taken: Database.Database, copy: string): void {
  const why = wordIntegrityFault(taken.pragma('integrity_check(1)', { simple: true }))
  if (why !== undefined) throw notSound(copy, why)
  if (Number(taken.pragma('application_id', { simple: true })) !== applicationId)
    throw notSound(copy, 'it is no file of Tallyplate')
  const found = readLayout(taken)
  if (found > newestLayout)
    throw new Refusal({ code: 'database-from-newer-program', file: copy, found, known: newestLayout })
}

/**
 * Moves the present file aside under a dated name. Sound or not, it is kept: with its log folded in where it can be
 * opened, and with the log beside it where it cannot.
 */
function keepPresent(file: string, now: Date): string {
  refuseWhileOpen(file)
  const kept = `${file}.before-restore-${now.toISOString().replaceAll(/[-:]|\.\d+/g, '')}`
  for (const ending of sidecars) if (existsSync(file + ending)) renameSync(file + ending, kept + ending)
  return kept
}

const sidecars = ['', '-wal', '-shm']

/** Leaving WAL needs the file to oneself: it fails while any other program has it open, even one that only reads. */
function refuseWhileOpen(file: string): void {
  let present: Database.Database | undefined
  try {
    present = new Database(file, { timeout: 0 })
    present.pragma('locking_mode = EXCLUSIVE')
    present.pragma('journal_mode = DELETE')
    present.exec('BEGIN EXCLUSIVE; ROLLBACK')
  } catch (thrown) {
    if (thrown instanceof Database.SqliteError && /^SQLITE_(BUSY|LOCKED)/.test(thrown.code))
      throw new Refusal({ code: 'database-in-use', file })
    // A file that cannot be opened for any other reason is the very one that a copy is to replace.
  } finally {
    present?.close()
  }
}

/** The name is given only to what has reached the disk. */
function syncFile(file: string): void {
  const descriptor = openSync(file, 'r+')
  fsyncSync(descriptor)
  closeSync(descriptor)
}

function discard(incoming: string): void {
  for (const ending of sidecars) rmSync(incoming + ending, { force: true })
}

function notSound(file: string, why: string): Refusal {
  return new Refusal({ code: 'copy-not-sound', file, why })
}
