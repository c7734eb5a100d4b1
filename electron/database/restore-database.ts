import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import Database from 'better-sqlite3'
import { Refusal } from '../requests/refusal.ts'
import { applicationId, newestLayout, readLayout } from './migrate.ts'

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

/** Checks the copy and writes it anew, whole and without a log, beside the file that it will replace. */
function takeIn(copy: string, incoming: string): void {
  if (!existsSync(copy))
    throw new Refusal({ code: 'file-unreadable', file: copy, why: 'there is no such file' })
  const source = openCopy(copy)
  try {
    refuseUnsound(source, copy)
    source.prepare('VACUUM INTO ?').run(incoming)
  } catch (thrown) {
    throw thrown instanceof Database.SqliteError ? notSound(copy, thrown.message) : thrown
  } finally {
    source.close()
  }
}

function openCopy(copy: string): Database.Database {
  try {
    return new Database(copy, { readonly: true, fileMustExist: true })
  } catch (thrown) {
    throw notSound(copy, (thrown as Error).message)
  }
}

function refuseUnsound(source: Database.Database, copy: string): void {
  const checked = source.pragma('integrity_check(1)', { simple: true })
  if (checked !== 'ok') throw notSound(copy, String(checked))
  if (Number(source.pragma('application_id', { simple: true })) !== applicationId)
    throw notSound(copy, 'it is no file of Tallyplate')
  const found = readLayout(source)
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

/** VACUUM INTO leaves its file to the system to write out; the name is given only to what is on the disk. */
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
