import { z } from 'zod'
import type { LoadedFile } from '../../../shared-schemas/catalogue.ts'
import type { LoadEntry } from '../../../shared-schemas/load-log.ts'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'

/** The row changes of one run: from the first to the last; none where the last is before the first. */
export interface ChangeSpan {
  readonly first: number
  readonly last: number
}

export interface HashedFile extends LoadedFile {
  readonly sha256: string
  readonly bytes: number
}

/** The number of the last row change that was kept. */
export function readLastChange(database: ReadableDatabase): number {
  return database.row(lastRow, 'SELECT ifnull(max(change_id), 0) AS last FROM load_change')?.last ?? 0
}

const lastRow = z.object({ last: z.int() })

/** The row changes of a run; undefined for one without an account. */
export function readChangeSpan(database: ReadableDatabase, loadRunId: number): ChangeSpan | undefined {
  return database.row(
    spanRow,
    'SELECT first_change AS first, last_change AS last FROM load_account WHERE load_run_id = ?',
    loadRunId,
  )
}

const spanRow = z.object({ first: z.int(), last: z.int() })

export interface Account {
  readonly loadRunId: number
  readonly initials: string
  readonly device: string
  readonly changes: ChangeSpan
  readonly undoes: number | null
  /** By which layout a supplier's list was read. */
  readonly layout: string | null
}

/** Keeps who loaded and by which layout, what was undone by it, and which row changes are its own. */
export function appendAccount(database: WritableDatabase, account: Account): void {
  const { loadRunId, initials, device, changes, undoes, layout } = account
  database.run(
    `INSERT INTO load_account (load_run_id, initials, device, first_change, last_change, undoes, layout)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
    ...[loadRunId, initials, device, changes.first, changes.last, undoes, layout],
  )
}

export function appendLoadedFile(database: WritableDatabase, loadRunId: number, loaded: HashedFile): void {
  const { file, sha256, bytes, added, changed, unchanged, retired, rejected } = loaded
  database.run(
    `INSERT INTO loaded_file (load_run_id, file, sha256, bytes, added, changed, unchanged, retired, rejected)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    loadRunId,
    ...[file, sha256, bytes, added, changed, unchanged, retired, rejected],
  )
}

const loadRow = z.object({
  load_run_id: z.int(),
  loaded_at: z.string(),
  path: z.string().nullable(),
  correction_reason: z.string().nullable(),
  initials: z.string(),
  device: z.string(),
  undoes: z.int().nullable(),
  undone_by: z.int().nullable(),
  layout: z.string().nullable(),
})

const fileRow = z.object({
  file: z.string(),
  sha256: z.string(),
  bytes: z.int(),
  added: z.int(),
  changed: z.int(),
  unchanged: z.int(),
  retired: z.int(),
  rejected: z.int(),
})

/** The loads and what was undone, the latest first. Corrections of single fitments are told in the history of a verdict. */
export function listLoads(database: ReadableDatabase): LoadEntry[] {
  const runs = database.rows(
    loadRow,
    `SELECT load_run_id, loaded_at, path, correction_reason, initials, device, undoes, layout,
       (SELECT later.load_run_id FROM load_account AS later WHERE later.undoes = load_run.load_run_id) AS undone_by
     FROM load_run JOIN load_account USING (load_run_id) ORDER BY load_run_id DESC`,
  )
  return runs.map(run => ({
    loadRunId: run.load_run_id,
    at: run.loaded_at,
    path: run.path,
    reason: run.correction_reason,
    initials: run.initials,
    device: run.device,
    undoes: run.undoes,
    undoneBy: run.undone_by,
    layout: run.layout,
    files: database.rows(
      fileRow,
      `SELECT file, sha256, bytes, added, changed, unchanged, retired, rejected FROM loaded_file
       WHERE load_run_id = ? ORDER BY file`,
      run.load_run_id,
    ),
  }))
}
