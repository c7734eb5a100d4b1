import { readFile, stat } from 'node:fs/promises'
import { type CellObject, read, type WorkBook, type WorkSheet } from '@e965/xlsx'
import type { Sheet } from '../../../shared-schemas/supplier-layouts.ts'
import { RowFault } from '../loading/row-fault.ts'
import { findArchiveFault, mostUnpackedBytes } from './check-archive.ts'
import { refusing, unreadable } from './refuse-unreadable.ts'
import { showCell } from './show-cell.ts'
import type { SourceRow, SourceRows } from './source-rows.ts'

export interface Workbook {
  readonly sheets: readonly Sheet[]
  /** The rows of a sheet that hold something, each as wide as the widest, by their numbers. */
  readRows(sheet: string): Generator<SourceRows>
}

/** Opens an .xlsx file, whole and sound, or refuses it. */
export async function openWorkbook(file: string): Promise<Workbook> {
  const { size } = await refusing(file, () => stat(file))
  if (size > mostUnpackedBytes)
    throw unreadable(file, 'it is too large for a workbook: save the sheet as CSV')
  const archive = await refusing(file, () => readFile(file))
  const fault = findArchiveFault(archive)
  if (fault !== undefined) throw unreadable(file, fault)
  const workbook = readWorkbook(file, archive)
  const from1904 = workbook.Workbook?.WBProps?.date1904 === true
  return {
    sheets: workbook.SheetNames.map((name, at) => ({
      name,
      hidden: (workbook.Workbook?.Sheets?.[at]?.Hidden ?? 0) !== 0,
    })),
    readRows: sheet => readSheet(sheetNamed(workbook, { sheet, file }), { from1904 }),
  }
}

/** The reader leaves out a sheet that it cannot find in the archive. */
function sheetNamed(
  { Sheets: sheets }: WorkBook,
  { sheet, file }: { readonly sheet: string; readonly file: string },
): WorkSheet {
  const found = sheets[sheet]
  if (found?.['!data'] === undefined) throw unreadable(file, `its sheet “${sheet}” cannot be read`)
  return found
}

/** The archive is sound by now, so that what the reader cannot make out was never a workbook. */
function readWorkbook(file: string, archive: Buffer): WorkBook {
  try {
    return read(archive, { type: 'buffer', dense: true, cellNF: true, cellFormula: true, cellHTML: false })
  } catch {
    throw unreadable(
      file,
      'what stands in it is no workbook: open it in a spreadsheet program and save it anew',
    )
  }
}

const rowsAtOnce = 500

function* readSheet(sheet: WorkSheet, dates: { readonly from1904: boolean }): Generator<SourceRows> {
  // With `dense`, which its types leave out, the cells stand in rows by their numbers; a row or cell may be absent.
  const data = (sheet['!data'] ?? []) as readonly (readonly (CellObject | undefined)[] | undefined)[]
  const width = data.reduce((widest, cells) => Math.max(widest, cells?.length ?? 0), 0)
  let rows: SourceRow[] = []
  for (const [at, cells] of data.entries()) {
    const row = cells === undefined ? undefined : readRow(cells, { line: at + 1, width, dates })
    if (row !== undefined) rows.push(row)
    if (rows.length < rowsAtOnce) continue
    yield { rows, share: (at + 1) / data.length }
    rows = []
  }
  yield { rows, share: 1 }
}

interface RowPlace {
  readonly line: number
  readonly width: number
  readonly dates: { readonly from1904: boolean }
}

function readRow(
  cells: readonly (CellObject | undefined)[],
  { line, width, dates }: RowPlace,
): SourceRow | undefined {
  const shown = Array.from({ length: width }, (_, at) => showCell(cells[at], dates))
  const unsaved = cells.findIndex(cell => cell?.f !== undefined && cell.v === undefined)
  const fault = unsaved < 0 ? undefined : new RowFault('', wordUnsaved(unsaved))
  return shown.every(text => text === '') && fault === undefined ? undefined : { line, cells: shown, fault }
}

function wordUnsaved(at: number): string {
  return `holds a formula in cell ${at + 1} whose result was not saved: open the file in a spreadsheet program and save it`
}
