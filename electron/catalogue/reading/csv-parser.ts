import Papa from 'papaparse'
import type { Separator } from '../../../shared-schemas/supplier-layouts.ts'
import { RowFault } from '../loading/row-fault.ts'
import { longestRow } from './file-pieces.ts'
import { countBreaks } from './read-text.ts'
import { unreadable } from './refuse-unreadable.ts'
import type { SourceRow } from './source-rows.ts'

/** Makes rows of text that comes piece by piece, and holds what is left of a row until the rest of it has come. */
export class CsvParser {
  readonly #file: string
  readonly #parser: Papa.Parser
  #rest = ''
  #line: number

  /** `firstLine`: the number of the line that comes first. */
  constructor(file: string, { separator, firstLine }: { separator: Separator; firstLine: number }) {
    this.#file = file
    this.#line = firstLine
    this.#parser = new Papa.Parser({ delimiter: separator, quoteChar: '"', escapeChar: '"', newline: '\n' })
  }

  parse(text: string): SourceRow[] {
    return this.#read(this.#rest + text, false)
  }

  end(): SourceRow[] {
    return this.#read(this.#rest, true)
  }

  #read(text: string, isLast: boolean): SourceRow[] {
    const { data, errors, meta } = this.#parser.parse(text, 0, !isLast) as Papa.ParseResult<string[]>
    this.#rest = text.slice(meta.cursor)
    if (this.#rest.length > longestRow)
      throw endless(this.#file, this.#line + data.reduce((sum, cells) => sum + countRowLines(cells), 0))
    const faults = new Map(errors.map(error => [error.row, error]))
    const rows: SourceRow[] = []
    for (const [at, cells] of data.entries()) {
      const fault = faults.size === 0 ? undefined : faults.get(at)
      if (cells.length > 1 || cells[0] !== '' || fault !== undefined)
        rows.push({ line: this.#line, cells, fault: fault && new RowFault('', wordFault(fault)) })
      this.#line += countRowLines(cells)
    }
    return rows
  }
}

function wordFault({ code }: Papa.ParseError): string {
  return code === 'MissingQuotes'
    ? 'opens a quote that is never closed: close it, and load again for the lines after it'
    : 'holds a quote inside a quoted cell: write it twice'
}

function countRowLines(cells: readonly string[]): number {
  let lines = 1
  for (const cell of cells) if (cell.includes('\n')) lines += countBreaks(cell)
  return lines
}

function endless(file: string, line: number) {
  return unreadable(file, `the row that begins on line ${line} does not end; close the quote that it opens`)
}
