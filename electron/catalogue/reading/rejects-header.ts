import { unguardCell } from '../../../shared-schemas/csv-text.ts'
import { RowFault } from '../loading/row-fault.ts'
import type { RowSource, SourceRow, SourceRows } from './source-rows.ts'

/** The headings that a file of rejected rows has after its own. */
export const reasonColumns = [
  'rejected_line',
  'rejected_column',
  'rejected_value',
  'rejected_reason',
  'proposed_mend',
] as const

/** What stands for the column where the row itself has the wrong shape. */
export const wholeRow = 'the whole row'

/** The rows of a file; `mended` where it is one of rejected rows, which begins with its headings. */
export interface PlainRows extends SourceRows {
  readonly mended: boolean
}

/**
 * Reads a file of rejected rows as the file that they came from: its last columns are left out, and what was written so
 * that no spreadsheet runs it reads as it was. Other files pass through. A row that was rejected for its shape was
 * filled up to be written, so it is taken only once somebody has emptied its cell under `rejected_column`.
 */
export async function* readMendedRows(source: RowSource): AsyncGenerator<PlainRows> {
  let [isFirst, mended] = [true, false]
  for await (const { rows, share } of source) {
    if (isFirst && rows.length > 0) {
      mended = isRejectsHeader(rows[0]?.cells ?? [])
      isFirst = false
    }
    yield { rows: mended ? rows.map(stripReasons) : rows, share, mended }
  }
}

function isRejectsHeader(cells: readonly string[]): boolean {
  const last = cells.slice(-reasonColumns.length)
  return (
    cells.length > reasonColumns.length && reasonColumns.every((column, at) => last[at]?.trim() === column)
  )
}

function stripReasons({ line, cells, fault }: SourceRow): SourceRow {
  const own = cells.length - reasonColumns.length
  const isMisshapen = cells[own + reasonColumns.indexOf('rejected_column')] === wholeRow
  const told = isMisshapen ? new RowFault('', wordMisshapen) : undefined
  return { line, cells: cells.slice(0, Math.max(0, own)).map(unguardCell), fault: fault ?? told }
}

const wordMisshapen =
  'was rejected for its shape: put each cell under its heading, then empty the cell under rejected_column'
