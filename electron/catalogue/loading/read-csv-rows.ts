import { type FileHandle, open } from 'node:fs/promises'
import Papa from 'papaparse'
import { Refusal } from '../../requests/refusal.ts'

/** One record of a CSV file as it stood. */
export interface CsvRow {
  /** The physical line on which it begins, the first line of the file being 1. */
  readonly line: number
  readonly cells: readonly string[]
  /** What is wrong with its quotes, if anything. */
  readonly fault: string | undefined
}

export interface CsvRows {
  readonly rows: readonly CsvRow[]
  /** How much of the file has been read, 0 to 1. */
  readonly share: number
}

/**
 * The rows of a UTF-8 file as RFC 4180 has them, some hundreds at a time, so that a file of any size fits in memory.
 * Lines may end with CR LF, LF or CR; inside a cell each comes out as LF. Empty lines are passed over.
 */
export async function* readCsvRows(file: string): AsyncGenerator<CsvRows> {
  const parser = new CsvParser(file)
  for await (const { text, share } of readText(file)) yield { rows: parser.parse(text), share }
  yield { rows: parser.end(), share: 1 }
}

const pieceBytes = 96 * 1024
/** A cell as long as this is a quote that was never closed. */
const longestRow = 1024 * 1024

interface Piece {
  readonly text: string
  readonly share: number
}

/**
 * Whole lines, with LF ends. Bytes are cut only at line ends, which are never part of another character in UTF-8, so
 * that a character split between two reads comes out right and a wrong byte is known by its line.
 */
async function* readText(file: string): AsyncGenerator<Piece> {
  const handle = await refusing(file, () => open(file, 'r'))
  try {
    const { size } = await refusing(file, () => handle.stat())
    let [rest, line, bytesRead] = [Buffer.alloc(0) as Buffer, 1, 0]
    for (;;) {
      const bytes = await refusing(file, () => readPiece(handle))
      bytesRead += bytes.length
      const all = Buffer.concat([rest, bytes])
      const end = bytes.length === 0 ? all.length : endOfLines(all)
      rest = all.subarray(end)
      if (rest.length > 4 * longestRow) throw endless(file, line)
      const text = decodeLines(all.subarray(0, end), file, line)
      line += countLines(text)
      if (text !== '') yield { text, share: size === 0 ? 1 : Math.min(1, bytesRead / size) }
      if (bytes.length === 0) return
    }
  } finally {
    await handle.close()
  }
}

async function readPiece(handle: FileHandle): Promise<Buffer> {
  const { buffer, bytesRead } = await handle.read(Buffer.allocUnsafe(pieceBytes), 0, pieceBytes)
  return buffer.subarray(0, bytesRead)
}

/** Where the whole lines end. A CR at the very end may be half of CR LF, so it waits. */
function endOfLines(bytes: Buffer): number {
  const afterFeed = bytes.lastIndexOf(0x0a) + 1
  return afterFeed > 0 ? afterFeed : Math.max(0, bytes.lastIndexOf(0x0d, bytes.length - 2) + 1)
}

const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

function decodeLines(bytes: Buffer, file: string, firstLine: number): string {
  try {
    const text = strict.decode(bytes).replace(/\r\n?/g, '\n')
    return firstLine === 1 && text.startsWith('\u{feff}') ? text.slice(1) : text
  } catch {
    throw new Refusal({ code: 'file-unreadable', file, why: notUtf8(firstLine + findWrongLine(bytes)) })
  }
}

function notUtf8(line: number): string {
  return `line ${line} is not UTF-8; save the file as “CSV UTF-8”`
}

/** How many lines are right before the first that is not UTF-8. */
function findWrongLine(bytes: Buffer): number {
  const lossy = bytes.toString('latin1').split(/\r\n|\r|\n/)
  return lossy.findIndex(line => !isUtf8(Buffer.from(line, 'latin1')))
}

function isUtf8(bytes: Buffer): boolean {
  try {
    strict.decode(bytes)
    return true
  } catch {
    return false
  }
}

/** Holds what is left of a row until the rest of it has come. */
class CsvParser {
  readonly #file: string
  readonly #parser = new Papa.Parser({ delimiter: ',', quoteChar: '"', escapeChar: '"', newline: '\n' })
  #rest = ''
  #line = 1

  constructor(file: string) {
    this.#file = file
  }

  parse(text: string): CsvRow[] {
    return this.#read(this.#rest + text, false)
  }

  end(): CsvRow[] {
    return this.#read(this.#rest, true)
  }

  #read(text: string, isLast: boolean): CsvRow[] {
    const { data, errors, meta } = this.#parser.parse(text, 0, !isLast) as Papa.ParseResult<string[]>
    this.#rest = text.slice(meta.cursor)
    if (this.#rest.length > longestRow)
      throw endless(this.#file, this.#line + data.reduce((sum, cells) => sum + countRowLines(cells), 0))
    const faults = new Map(errors.map(error => [error.row, error]))
    const rows: CsvRow[] = []
    for (const [at, cells] of data.entries()) {
      const fault = faults.size === 0 ? undefined : faults.get(at)
      if (cells.length > 1 || cells[0] !== '')
        rows.push({ line: this.#line, cells, fault: fault && wordFault(fault) })
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
  for (const cell of cells) if (cell.includes('\n')) lines += countLines(cell)
  return lines
}

function countLines(text: string): number {
  let lines = 0
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines += 1
  return lines
}

function endless(file: string, line: number): Refusal {
  const why = `the row that begins on line ${line} does not end; close the quote that it opens`
  return new Refusal({ code: 'file-unreadable', file, why })
}

/** What the system says of a file that cannot be read, as a problem. */
export async function refusing<Value>(file: string, read: () => Promise<Value>): Promise<Value> {
  try {
    return await read()
  } catch (thrown) {
    if (thrown instanceof Error && 'code' in thrown)
      throw new Refusal({ code: 'file-unreadable', file, why: wordSystemError(String(thrown.code)) })
    throw thrown
  }
}

function wordSystemError(code: string): string {
  switch (code) {
    case 'ENOENT':
      return 'there is no such file or folder'
    case 'EACCES':
    case 'EPERM':
      return 'this account has no right to it'
    case 'EISDIR':
      return 'it is a folder'
    default:
      return code
  }
}
