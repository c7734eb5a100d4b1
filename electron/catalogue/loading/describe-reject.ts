import type { SourceRow } from '../reading/source-rows.ts'
import type { FileToLoad } from './list-files.ts'
import type { MendFinder } from './propose-mend.ts'
import type { RejectedAsItStood } from './rejects.ts'
import type { RowFault } from './row-fault.ts'

interface Rejected {
  readonly row: SourceRow
  readonly fault: RowFault
  /** Our columns, in the order of the row's cells. */
  readonly header: readonly string[]
}

/** Tells of a rejected row in the words of the file that it stood in: its heading, its cell, and what may be meant. */
export function describeReject(
  { name, file, own }: FileToLoad,
  { row, fault, header }: Rejected,
  mends: MendFinder,
): RejectedAsItStood {
  const { line, origin } = row
  const cells = origin?.cells ?? row.cells
  const column = fault.column === '' ? '' : own.headingOf(fault.column)
  const at = own.headings().indexOf(column)
  const value = column === '' ? '' : readValue({ row, fault, header }, cells[at])
  const isMisshapen = cells.length < own.headings().length || (fault === row.fault && fault.column === '')
  const mend = mends.find({
    file: file.name,
    column: fault.column,
    value,
    decimalSign: own.decimalSignOf(fault.column),
    cellOf: other => row.cells[header.indexOf(other)]?.trim() ?? '',
  })
  return { file: name, line, column, reason: fault.reason, value, mend, cells, isMisshapen }
}

/** As it stood in the file: of many models in one cell the one that is meant, and a constant where no cell holds it. */
function readValue({ row, fault, header }: Rejected, cell: string | undefined): string {
  const at = header.indexOf(fault.column)
  const isPiece = row.origin?.piece !== undefined && at === header.length - 1
  return (isPiece ? row.origin?.piece : (cell ?? row.cells[at])) ?? ''
}
