import { z } from 'zod'
import type { ReadableDatabase } from '../../database/handles.ts'
import { Refusal } from '../../requests/refusal.ts'
import type { ChangeSpan } from './load-log-queries.ts'

const accountRow = z.object({
  first: z.int(),
  last: z.int(),
  undoes: z.int().nullable(),
  undone_by: z.int().nullable(),
})

/** The row changes of a load that can be taken back; refused where it was already, or a later load wrote the same rows. */
export function readUndoable(database: ReadableDatabase, loadRunId: number): ChangeSpan {
  const account = database.row(
    accountRow,
    `SELECT first_change AS first, last_change AS last, undoes,
       (SELECT later.load_run_id FROM load_account AS later WHERE later.undoes = mine.load_run_id) AS undone_by
     FROM load_account AS mine WHERE load_run_id = ?`,
    loadRunId,
  )
  if (account === undefined) throw new Refusal({ code: 'load-not-found', loadRunId })
  if (account.undoes !== null)
    throw new Refusal({ code: 'load-is-undoing', loadRunId, undoes: account.undoes })
  if (account.undone_by !== null)
    throw new Refusal({ code: 'load-undone-already', loadRunId, undoneBy: account.undone_by })
  const later = findLaterWriter(database, loadRunId, account)
  if (later !== undefined) throw new Refusal({ code: 'load-built-upon', loadRunId, later })
  return account
}

/** A later load that was itself undone wrote nothing that stands, and neither did its undoing. */
function findLaterWriter(
  database: ReadableDatabase,
  loadRunId: number,
  { first, last }: ChangeSpan,
): number | undefined {
  return database.row(
    z.object({ load_run_id: z.int() }),
    `WITH later AS (
       SELECT load_run_id, first_change, last_change FROM load_account AS run
       WHERE load_run_id > ?1 AND ifnull(undoes, 0) <= ?1
         AND NOT EXISTS (SELECT 1 FROM load_account AS undoing WHERE undoing.undoes = run.load_run_id))
     SELECT load_run_id FROM later
       CROSS JOIN load_change AS theirs ON theirs.change_id BETWEEN first_change AND last_change
       JOIN load_change AS mine ON mine.table_name = theirs.table_name AND mine.row_key = theirs.row_key
     WHERE mine.change_id BETWEEN ?2 AND ?3
     ORDER BY load_run_id DESC LIMIT 1`,
    loadRunId,
    first,
    last,
  )?.load_run_id
}
