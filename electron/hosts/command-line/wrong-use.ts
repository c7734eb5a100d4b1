/** The command line was used wrongly. The message is the one line that is shown: what is wrong, then what to do. */
export class WrongUse extends Error {
  constructor(line: string) {
    super(line)
    this.name = 'WrongUse'
  }
}
