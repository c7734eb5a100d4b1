/**
 * Why one row of a catalogue file is not taken. Thrown by whatever finds it and caught where the row was handed out,
 * so that the rules read straight on; a faulty row never ends the run. No stack is kept: a file may hold many.
 */
export class RowFault {
  /** Empty where the whole row is at fault. */
  readonly column: string
  /** What is wrong and what to do, in words that follow the name of the column. */
  readonly reason: string

  constructor(column: string, reason: string) {
    this.column = column
    this.reason = reason
  }
}
