import { z } from 'zod'
import type { LedgerConflict } from '../../shared-schemas/stock-ledger.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const conflictRow = z.object({ job: z.string(), devices: z.string() })

/** Numbers that two machines each gave to a job of their own, until somebody has written the facts anew. */
export function listJobConflicts(database: ReadableDatabase): LedgerConflict[] {
  return database
    .rows(
      conflictRow,
      `SELECT job, json_group_array(device ORDER BY job_sheet_id) AS devices FROM job_sheet WHERE opens = 1
       GROUP BY job HAVING count(*) > 1
         AND (SELECT opens FROM job_sheet AS last WHERE last.job = job_sheet.job ORDER BY job_sheet_id DESC LIMIT 1) = 1
       ORDER BY job`,
    )
    .map(row => ({
      kind: 'job-number-twice' as const,
      job: row.job,
      devices: z.array(z.string()).parse(JSON.parse(row.devices)),
    }))
}
