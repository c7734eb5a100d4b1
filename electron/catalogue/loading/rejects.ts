import type { RejectedRow } from '../../../shared-schemas/catalogue.ts'

/** A row that was not taken, with what is needed to write it so that it can be mended and loaded again. */
export interface RejectedAsItStood extends RejectedRow {
  readonly cells: readonly string[]
  /** Whether its cells are not each under their heading, so that they mean nothing before somebody has looked. */
  readonly isMisshapen: boolean
}

/** The rows that a run did not take, in the order of the files and their lines. */
export class Rejects {
  readonly #rows: RejectedAsItStood[] = []

  add(row: RejectedAsItStood): void {
    this.#rows.push(row)
  }

  asTheyStood(): readonly RejectedAsItStood[] {
    return this.#rows
  }

  report(): RejectedRow[] {
    return this.#rows.map(({ cells: _cells, isMisshapen: _isMisshapen, ...row }) => row)
  }
}
