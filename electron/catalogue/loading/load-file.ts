import type { LoadedFile } from '../../../shared-schemas/catalogue.ts'
import type { Task } from '../../requests/handlers.ts'
import { takeBreaths } from '../fitments/take-breaths.ts'
import type { SourceRow } from '../reading/source-rows.ts'
import type { Cells, CellTaker, LoadRun, StoredRows } from './catalogue-file.ts'
import { checkHeader } from './check-header.ts'
import { describeReject } from './describe-reject.ts'
import { findSwallowedRows } from './find-swallowed-rows.ts'
import type { Outcome } from './keyed-rows.ts'
import type { FileToLoad } from './list-files.ts'
import type { MendFinder } from './propose-mend.ts'
import type { Rejects } from './rejects.ts'
import { RowFault } from './row-fault.ts'
import { takePlainLines } from './take-plain-lines.ts'

/** Loads one file within the run's transaction and counts what became of its rows. */
export async function loadFile(
  run: LoadRun,
  toLoad: FileToLoad,
  { rejects, mends, task }: { readonly rejects: Rejects; readonly mends: MendFinder; readonly task: Task },
): Promise<LoadedFile> {
  const { file, path, read } = toLoad
  const tally = new Tally(toLoad.name)
  const taker = file.open(run)
  const taken = await takePlainLines(toLoad.isPlain ? path : undefined, {
    file,
    taker,
    takeSlowly: (named, row) => tally.settle(row, takeRow(taker, named, file.columns, row)),
    tell: (rows, share) => tally.passOver(rows, task, share),
  })
  let header = taken.wholeWith
  for await (const { rows, share } of header === undefined ? read() : []) {
    for (const row of rows) {
      if (header === undefined) header = checkHeader(file, path, row.cells)
      else if (row.line > taken.lines) tally.settle(row, takeRow(taker, header, file.columns, row))
    }
    tally.report(task, share)
  }
  header ??= checkHeader(file, path, [])
  for (const [line, outcome] of taker.finish?.() ?? []) tally.settleLater(line, outcome)
  if (taker.store !== undefined) {
    const stored = await takeBreaths(taker.store(), () => tally.report(task, 1))
    const named = header
    const refuse = tally.settleGathered(stored, row => nameCells(named, file.columns, row.cells))
    if (stored.refused.length > 0) for await (const { rows } of read()) rows.forEach(refuse)
  }
  const sound = header
  toLoad.own.tell(sound)
  const counted = tally.close((row, fault) =>
    rejects.add(describeReject(toLoad, { row, fault, header: sound }, mends)),
  )
  // A row that cannot be read may be the new saying of a former one, so nothing is retired before all are sound.
  const isWhole = run.edition && counted.rejected === 0
  return { ...counted, retired: isWhole ? await retireUnsaid(taker) : 0 }
}

async function retireUnsaid(taker: CellTaker): Promise<number> {
  const retired = taker.retireUnsaid?.() ?? 0
  return typeof retired === 'number' ? retired : await takeBreaths(retired)
}

/** The one place that catches what is wrong with a row. */
function takeRow(
  taker: CellTaker,
  header: readonly string[],
  columns: readonly string[],
  row: SourceRow,
): Outcome | 'later' | 'gathered' | RowFault {
  if (row.fault !== undefined) return row.fault
  if (row.cells.length !== header.length) return new RowFault('', wordWidth(row.cells.length, header.length))
  const swallowed = findSwallowedRows(row.cells)
  if (swallowed !== undefined) return new RowFault(header[swallowed.at] ?? '', wordSwallowed(swallowed.lines))
  try {
    return taker.take(nameCells(header, columns, row.cells), row.line)
  } catch (thrown) {
    if (thrown instanceof RowFault) return thrown
    throw thrown
  }
}

function wordWidth(found: number, expected: number): string {
  const hint = found > expected ? 'put a cell with a comma in quotes' : 'write a comma for each empty cell'
  return `has ${found} ${found === 1 ? 'cell' : 'cells'} where the header has ${expected}: ${hint}`
}

function wordSwallowed(lines: number): string {
  return `holds ${lines} lines that look like rows of their own: take out the quote that opens it, or close it`
}

/** Blanks round a cell are nobody's meaning. A column that is not there is not known. */
function nameCells(header: readonly string[], columns: readonly string[], cells: readonly string[]): Cells {
  const named: Record<string, string> = {}
  for (const column of columns) named[column] = ''
  for (const [at, column] of header.entries()) named[column] = cells[at]?.trim() ?? ''
  return named
}

const reportEveryMilliseconds = 200

class Tally {
  readonly #file: string
  readonly #counts = { added: 0, changed: 0, unchanged: 0, rejected: 0 }
  /** Rows put off, so that they can be written among the rejected as they stood. */
  readonly #later = new Map<number, SourceRow>()
  readonly #rejected: (readonly [row: SourceRow, fault: RowFault])[] = []
  #rows = 0
  #reportedAt = 0

  constructor(file: string) {
    this.#file = file
  }

  settle(row: SourceRow, outcome: Outcome | 'later' | 'gathered' | RowFault): void {
    this.#rows += 1
    if (outcome === 'later') this.#later.set(row.line, row)
    else if (outcome !== 'gathered') this.#count(row, outcome)
  }

  /** Rows that were gathered without having been looked at one by one. */
  passOver(rows: number, task: Task, share: number): void {
    this.#rows += rows
    this.report(task, share)
  }

  /**
   * Counts the rows that were gathered. Those that were refused only when all were known are no longer at hand: what it
   * gives is to be shown every row of the file once more, and rejects each of them as it stands.
   */
  settleGathered({ counts, refused }: StoredRows, name: (row: SourceRow) => Cells): (row: SourceRow) => void {
    for (const outcome of ['added', 'changed', 'unchanged'] as const) this.#counts[outcome] += counts[outcome]
    const refusedOfLine = Map.groupBy(refused, ({ line }) => line)
    const rejectedOfLine = Map.groupBy(this.#rejected, ([{ line }]) => line)
    const seenOfLine = new Map<number, number>()
    return row => {
      const ofLine = refusedOfLine.get(row.line)
      const rejected = rejectedOfLine.get(row.line) ?? []
      if (ofLine === undefined || rejected.some(([{ cells }]) => cells.join() === row.cells.join())) return
      const seen = seenOfLine.get(row.line) ?? 0
      seenOfLine.set(row.line, seen + 1)
      const one = ofLine.find(({ nth }) => nth === seen)
      if (one !== undefined) this.#count(row, one.word(name(row)))
    }
  }

  settleLater(line: number, outcome: Outcome | RowFault): void {
    const row = this.#later.get(line)
    if (row === undefined)
      throw new Error(`only a row that was put off is settled later, but line ${line} was not`)
    this.#count(row, outcome)
  }

  #count(row: SourceRow, outcome: Outcome | RowFault): void {
    if (outcome instanceof RowFault) {
      this.#counts.rejected += 1
      this.#rejected.push([row, outcome])
    } else this.#counts[outcome] += 1
  }

  /** A few times a second. How many rows there will be is reckoned from how much of the file they took. */
  report(task: Task, share: number): void {
    const now = performance.now()
    if (share < 1 && now - this.#reportedAt < reportEveryMilliseconds) return
    this.#reportedAt = now
    const expected = share > 0 ? Math.round(this.#rows / share) : this.#rows
    task.report({ what: this.#file, done: this.#rows, expected })
  }

  /** The end of the file: its rejected rows are handed on in the order of their lines, those put off among the others. */
  close(reject: (row: SourceRow, fault: RowFault) => void): Omit<LoadedFile, 'retired'> {
    this.#rejected.sort(([one], [other]) => one.line - other.line)
    for (const [row, fault] of this.#rejected) reject(row, fault)
    return { file: this.#file, ...this.#counts }
  }
}
