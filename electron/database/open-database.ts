import { existsSync, statSync } from 'node:fs'
import path from 'node:path'
import Database from 'better-sqlite3'
import type { Problem } from '../../shared-schemas/problem.ts'
import { Refusal } from '../requests/refusal.ts'
import { copyBeforeMigration } from './backup.ts'
import { DatabaseHandle } from './handles.ts'
import { applicationId, migrate, newestLayout, readLayout } from './migrate.ts'
import { wordIntegrityFault } from './word-integrity-fault.ts'

export const inMemory = ':memory:'

/**
 * Opens the shop's file, making it when it is not there, and brings it to the newest layout. A file that is newer,
 * damaged, another program's or busy is refused as a `Refusal` and left as it was; never replaced by an empty one.
 */
export function openDatabase(file: string): DatabaseHandle {
  const isNew = file === inMemory || !existsSync(file)
  // better-sqlite3 tells of a missing folder with a TypeError, which would pass for a defect of ours.
  if (isNew && file !== inMemory && !existsSync(path.dirname(file)))
    throw new Refusal({ code: 'database-unopenable', file, why: 'its folder is not there' })
  const connection = refusing(file, () => new Database(file))
  try {
    refusing(file, () => {
      if (!isNew) refuseStrangers(connection, file)
      setPragmas(connection)
      if (readLayout(connection) < newestLayout) {
        if (readLayout(connection) > 0) copyBeforeMigration(connection, file)
        migrate(connection)
      }
    })
    return new DatabaseHandle(connection)
  } catch (thrown) {
    connection.close()
    throw thrown
  }
}

function setPragmas(connection: Database.Database): void {
  // Readers never wait for the writer, and a commit is one append.
  connection.pragma('journal_mode = WAL')
  // An acknowledged movement survives a power cut: FULL syncs the log on each commit. The default, spelled out.
  connection.pragma('synchronous = FULL')
  // SQLite leaves references unchecked unless each connection asks.
  connection.pragma('foreign_keys = ON')
  // A second program may be writing; waiting this long is better than refusing at once.
  connection.pragma('busy_timeout = 5000')
  // Catalogues are read at random; 64 MB of pages keeps a shop's working set in memory.
  connection.pragma('cache_size = -65536')
  // Sorting and temporary tables never leave a file behind.
  connection.pragma('temp_store = MEMORY')
}

function refuseStrangers(connection: Database.Database, file: string): void {
  const layout = readLayout(connection)
  const mark = Number(connection.pragma('application_id', { simple: true }))
  const tables = Number(connection.prepare('SELECT count(*) FROM sqlite_schema').pluck().get())
  if (mark !== applicationId && tables > 0) throw new Refusal({ code: 'database-not-ours', file })
  if (layout > newestLayout)
    throw new Refusal({ code: 'database-from-newer-program', file, found: layout, known: newestLayout })
  if (statSync(file).size > checkedAtOpeningBytes) return
  const why = wordIntegrityFault(connection.pragma('quick_check(1)', { simple: true }))
  if (why !== undefined) throw new Refusal({ code: 'database-damaged', file, why })
}

/** The check reads every page. Up to this size it takes well under half a second; beyond, `verify` is there for it. */
const checkedAtOpeningBytes = 64 * 1024 * 1024

/** SQLite's own errors as problems that say what to do; anything else travels on as a defect. */
function refusing<Value>(file: string, open: () => Value): Value {
  try {
    return open()
  } catch (thrown) {
    throw thrown instanceof Database.SqliteError ? new Refusal(asProblem(thrown, file)) : thrown
  }
}

function asProblem({ code, message }: { code: string; message: string }, file: string): Problem {
  if (/^SQLITE_(CORRUPT|NOTADB|FORMAT)/.test(code)) return { code: 'database-damaged', file, why: message }
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return { code: 'database-busy', file }
  return { code: 'database-unopenable', file, why: message }
}
