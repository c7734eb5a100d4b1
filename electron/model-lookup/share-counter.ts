/**
 * How many trigrams each key of a table shares with a text. A count is a byte above `base`, and whatever is below counts
 * as none: so that counting anew need not clear a million bytes each time.
 */
export class ShareCounter {
  readonly counts: Uint8Array
  /** What stands for no count. */
  base = 0
  #next = 0

  constructor(places: number) {
    this.counts = new Uint8Array(places)
  }

  /** Begins anew, for counts up to `most`. */
  begin(most: number): void {
    this.base = this.#next
    if (this.base + most > largestByte) {
      this.counts.fill(0)
      this.base = 0
    }
    this.#next = this.base + most
  }
}

const largestByte = 255
