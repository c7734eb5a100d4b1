import type { JoinedTable } from '../stock-ledger/joined-tables.ts'

/** What is counted on any machine of the shop goes to the others. A count is posted only where it was begun. */
export const joinedCountTables: readonly JoinedTable[] = [
  { table: 'stock_count' },
  { table: 'count_reading' },
  { table: 'count_reading_withdrawn', mayBeTwice: true },
  { table: 'count_explanation' },
  { table: 'count_posting' },
]
