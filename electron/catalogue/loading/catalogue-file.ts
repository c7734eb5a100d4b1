import type { z } from 'zod'
import type { WritableDatabase } from '../../database/handles.ts'
import type { FitmentWriter } from '../fitment-writer.ts'
import type { SourceRow } from '../reading/source-rows.ts'
import type { Outcome } from './keyed-rows.ts'
import type { KnownThings } from './known-things.ts'
import { RowFault } from './row-fault.ts'

/** What one run of loading shares between its files. */
export interface LoadRun {
  readonly database: WritableDatabase
  readonly known: KnownThings
  readonly fitments: FitmentWriter
  readonly recordOpeningStock: RecordOpeningStock
  /** Whether the files are whole new editions: then what they no longer have is retired. */
  readonly edition: boolean
}

/** Moves the difference between what the opening stock says now and what it said before into the ledger. */
export type RecordOpeningStock = (database: WritableDatabase, opening: OpeningStock) => void

export interface OpeningStock {
  readonly partId: number
  readonly locationId: number
  /** Null: the line is new. */
  readonly before: number | null
  readonly now: number
}

/** The cells of a row by their columns, without the blanks round them. */
export type Cells = Readonly<Record<string, string>>

/**
 * The rows of one file as they come. A row that can be judged only with all the others is answered `later`; where there
 * may be millions, `gathered`, and they are told of together.
 */
export interface RowTaker<Row> {
  /** `cells` are those that the row was read from. */
  take(row: Row, line: number, cells: Cells): Outcome | 'later' | 'gathered'
  /** Takes a row that says nothing new and need not be checked again; undefined where it must. */
  takeRepeated?(cells: Cells, line: number): 'gathered' | undefined
  /** What became of the rows put off, by line. */
  finish?(): Iterable<readonly [line: number, Outcome | RowFault]>
  /** Stores the rows gathered; yields between its steps, so that others are answered. */
  store?(): Generator<number, StoredRows>
  /** Takes away what whoever the rows name said before and says no more, and counts it. */
  retireUnsaid?(): number | Generator<number, number>
  /** A way to take lines as bytes, where there is one for such a header: the rows that it cannot take, `takeSlowly` does. */
  openPlain?(header: readonly string[], takeSlowly: (row: SourceRow) => void): PlainLines | undefined
}

/** The same for rows that are not checked yet. */
export interface CellTaker extends Omit<RowTaker<Cells>, 'take' | 'takeRepeated'> {
  take(cells: Cells, line: number): Outcome | 'later' | 'gathered'
}

/** What became of the rows that were gathered, and which of them are refused after all. */
export interface StoredRows {
  readonly counts: Readonly<Record<Outcome, number>>
  readonly refused: readonly RefusedRow[]
}

export interface RefusedRow {
  readonly line: number
  /** Which of the rows gathered from that line, from 0: in a list with several models in a cell they share one. */
  readonly nth: number
  readonly word: (cells: Cells) => RowFault
}

export interface PlainTake {
  readonly lines: number
  readonly rows: number
  readonly isPlain: boolean
}

export interface PlainLines {
  /** Takes lines, each with its LF, until one is not plain; gives how many it took, empty ones and rows. */
  take(bytes: Uint8Array, firstLine: number): PlainTake
}

/** One kind of catalogue file: what its rows are, and how they are stored. */
export interface CatalogueFile {
  readonly name: string
  readonly columns: readonly string[]
  /** Without these no row means anything; the others may be left out, and are then not known. */
  readonly neededColumns: readonly string[]
  open(run: LoadRun): CellTaker
}

/** Declares a catalogue file. Its columns are the fields of its row, which checks each cell. */
export function defineFile<Row extends z.ZodObject>({
  name,
  row,
  neededColumns,
  open,
}: {
  readonly name: string
  readonly row: Row
  readonly neededColumns: readonly (keyof Row['shape'] & string)[]
  readonly open: (run: LoadRun) => RowTaker<z.output<Row>>
}): CatalogueFile {
  return {
    name,
    columns: Object.keys(row.shape),
    neededColumns,
    open: run => {
      const taker = open(run)
      const check = (cells: Cells, line: number) => taker.take(parseRow(row, cells), line, cells)
      return { ...taker, take: (cells, line) => taker.takeRepeated?.(cells, line) ?? check(cells, line) }
    },
  }
}

function parseRow<Row extends z.ZodObject>(row: Row, cells: Cells): z.output<Row> {
  const parsed = row.safeParse(cells)
  if (parsed.success) return parsed.data
  const first = parsed.error.issues[0]
  if (first === undefined) throw new Error('a row that does not parse has an issue')
  throw new RowFault(String(first.path[0] ?? ''), first.message)
}
