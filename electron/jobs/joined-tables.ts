import type { WritableDatabase } from '../database/handles.ts'
import type { JoinedTable, JoinedValues } from '../stock-ledger/joined-tables.ts'
import type { JobsShop } from './jobs-shop.ts'
import { writeJobRow } from './write-job-row.ts'

/** What is written of jobs on any machine of the shop goes to the others. */
export const joinedJobTables: readonly JoinedTable[] = [
  { table: 'job_sheet' },
  { table: 'job_need' },
  { table: 'job_fitting' },
  { table: 'job_visit' },
]

/** Writes the rows of the jobs anew of which something was joined. */
export function writeJoinedJobs(
  database: WritableDatabase,
  shop: Pick<JobsShop, 'lookUpPlate'>,
  lines: readonly { readonly table: string; readonly values: JoinedValues }[],
): void {
  const ofJobs = lines.filter(({ table }) => joinedJobTables.some(joined => joined.table === table))
  for (const job of new Set(ofJobs.map(({ values }) => String(values.job)))) writeJobRow(database, shop, job)
}
