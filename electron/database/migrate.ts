import type Database from 'better-sqlite3'
import { migrations } from './migrations/all-migrations.ts'

/** Marks the file as Tallyplate's: the four letters `TPLT`, read as one number. */
export const applicationId = 0x54504c54

export const newestLayout = migrations.length

/** Brings the database to the newest layout in one transaction. The caller has made a copy where rows are at stake. */
export function migrate(connection: Database.Database, steps: readonly string[] = migrations): void {
  connection
    .transaction(() => {
      for (const step of steps.slice(readLayout(connection))) connection.exec(step)
      connection.pragma(`user_version = ${steps.length}`)
      connection.pragma(`application_id = ${applicationId}`)
    })
    .immediate()
}

/** Which layout the file has; 0 is a new, empty file. */
export function readLayout(connection: Database.Database): number {
  return Number(connection.pragma('user_version', { simple: true }))
}
