/** On which line each of the rows stood, in their order. Most stand on the line after the one before, and take no memory. */
export class RowLines {
  readonly #rows: number[] = []
  readonly #lines: number[] = []
  #next = -1

  /** The next row stands on this line. */
  add(row: number, line: number): void {
    if (line !== this.#next) {
      this.#rows.push(row)
      this.#lines.push(line)
    }
    this.#next = line + 1
  }

  /** The line of a row, and which of the rows on it this is, from 0. */
  lineOf(row: number): { readonly line: number; readonly nth: number } {
    const stretch = this.#stretchOf(row)
    const line = this.#lineIn(stretch, row)
    let nth = 0
    while (nth < row && this.#lineIn(this.#stretchOf(row - nth - 1), row - nth - 1) === line) nth += 1
    return { line, nth }
  }

  #lineIn(stretch: number, row: number): number {
    return (this.#lines[stretch] as number) + row - (this.#rows[stretch] as number)
  }

  /** The last stretch that begins at this row or before it. */
  #stretchOf(row: number): number {
    let [low, high] = [0, this.#rows.length]
    while (low < high) {
      const middle = (low + high) >>> 1
      if ((this.#rows[middle] as number) <= row) low = middle + 1
      else high = middle
    }
    return low - 1
  }
}
