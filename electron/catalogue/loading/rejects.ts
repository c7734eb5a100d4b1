import type { RejectedRow } from '../../../shared-schemas/catalogue.ts'
import type { SourceRow } from '../reading/source-rows.ts'
import type { RowFault } from './row-fault.ts'

export interface RejectedAsItStood extends RejectedRow {
  readonly cells: readonly string[]
}

/** The rows that a run did not take, in the order of the files and their lines. */
export class Rejects {
  readonly #rows: RejectedAsItStood[] = []

  add(file: string, { line, cells }: SourceRow, { column, reason }: RowFault): void {
    this.#rows.push({ file, line, column, reason, cells })
  }

  asTheyStood(): readonly RejectedAsItStood[] {
    return this.#rows
  }

  report(): RejectedRow[] {
    return this.#rows.map(({ file, line, column, reason }) => ({ file, line, column, reason }))
  }
}
