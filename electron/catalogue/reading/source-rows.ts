import type { RowFault } from '../loading/row-fault.ts'

/** One row of a file, whatever kind of file it is. */
export interface SourceRow {
  /** The physical line on which it begins, the first line of the file being 1; of a sheet, the row's number. */
  readonly line: number
  readonly cells: readonly string[]
  /** What is wrong with it already, so that its cells cannot be trusted. */
  readonly fault: RowFault | undefined
  /** Where a layout made the cells: the row of the file as it stood. */
  readonly origin?: RowOrigin
}

export interface RowOrigin {
  readonly cells: readonly string[]
  /** The one of many models that this statement was made for, as it stood. */
  readonly piece?: string
}

export interface SourceRows {
  readonly rows: readonly SourceRow[]
  /** How much of the file has been read, 0 to 1. */
  readonly share: number
}

/** The rows of one file, header first, some hundreds at a time, so that a file of any size fits in memory. */
export type RowSource = AsyncIterable<SourceRows>
