import { type CellObject, utils, write } from '@e965/xlsx'

interface Sheet {
  readonly cells: readonly (readonly (CellObject | string | null)[])[]
  readonly hidden?: boolean
}

/** A workbook as a spreadsheet program would save it. A text is a text cell; other cells are given whole. */
export function makeWorkbook(sheets: Readonly<Record<string, Sheet>>, { from1904 = false } = {}): Buffer {
  const book = utils.book_new()
  for (const [name, { cells }] of Object.entries(sheets))
    utils.book_append_sheet(book, utils.aoa_to_sheet(cells.map(row => row.map(asCell))), name)
  book.Workbook = {
    WBProps: { date1904: from1904 },
    Sheets: Object.entries(sheets).map(([name, { hidden = false }]) => ({ name, Hidden: hidden ? 1 : 0 })),
  }
  const written: unknown = write(book, { type: 'buffer', bookType: 'xlsx', compression: true })
  if (!Buffer.isBuffer(written)) throw new Error('a workbook is written to a buffer')
  return written
}

function asCell(cell: CellObject | string | null): CellObject | null {
  return typeof cell === 'string' ? { t: 's', v: cell } : cell
}

export function figure(value: number, format: string): CellObject {
  return { t: 'n', v: value, z: format }
}
