import type { Layout } from '../../../shared-schemas/supplier-layouts.ts'
import { Refusal } from '../../requests/refusal.ts'
import { findSwallowedRows } from '../loading/find-swallowed-rows.ts'
import { RowFault } from '../loading/row-fault.ts'
import { readMendedRows } from '../reading/rejects-header.ts'
import type { RowSource, SourceRow } from '../reading/source-rows.ts'
import { columnReader } from './convert-cell.ts'
import { findMisfit } from './find-misfit.ts'
import { nameHeadings, placeHeadings } from './name-headings.ts'
import { pieceReader } from './read-pieces.ts'

export interface LayoutUse {
  readonly layout: Layout
  /** For messages. */
  readonly file: string
  /** What parts the cells of its lines; null for a sheet. */
  readonly separator: string | null
  /** Told the file's own headings once they are known, for what is written about its rows. */
  readonly told: (headings: readonly string[]) => void
}

/**
 * The rows of a supplier's file as rows of the catalogue file that it feeds, its header first. A row with many models
 * comes out as one for each, all with its line; nothing else of the loading knows that there was a layout.
 */
export async function* applyLayout(
  source: RowSource,
  use: LayoutUse,
): AsyncGenerator<{
  readonly rows: readonly SourceRow[]
  readonly share: number
}> {
  const { layout, file } = use
  const { headerRow } = layout.reading
  let fitted: FittedLayout | undefined
  let passed = 0
  for await (const { rows, share, mended } of readMendedRows(source)) {
    const mapped: SourceRow[] = []
    for (const row of rows) {
      passed += 1
      if (fitted !== undefined) {
        mapped.push(...fitted.mapRow(row))
        continue
      }
      // The headings of rejected rows stand in the first row, wherever they stood in the file that the rows are from.
      if (headerRow !== null && !mended && passed < headerRow) continue
      const hasHeadings = headerRow !== null || mended
      const headings = hasHeadings ? nameHeadings(row.cells) : placeHeadings(row.cells.length)
      fitted = fitLayout(use, headings)
      use.told(headings)
      mapped.push({ line: row.line, cells: fitted.header, fault: undefined })
      if (!hasHeadings) mapped.push(...fitted.mapRow(row))
    }
    yield { rows: mapped, share }
  }
  if (fitted === undefined)
    throw new Refusal({ code: 'layout-misfit', file, layout: layout.name, ...findMisfitOfNothing(layout) })
}

function findMisfitOfNothing(layout: Layout) {
  return findMisfit(layout, []) ?? { missing: [], added: [], repeated: [] }
}

interface FittedLayout {
  /** Our columns, in the order of the cells of every mapped row. */
  readonly header: readonly string[]
  readonly mapRow: (row: SourceRow) => SourceRow[]
}

function fitLayout({ layout, file, separator }: LayoutUse, headings: readonly string[]): FittedLayout {
  const misfit = findMisfit(layout, headings)
  if (misfit !== undefined) throw new Refusal({ code: 'layout-misfit', file, layout: layout.name, ...misfit })
  const { columns, shape } = layout
  const readers = columns.map(match => columnReader(match, headings))
  const readPieces = pieceReader(shape, headings)
  return {
    header: [...columns.map(({ column }) => column), ...(shape.kind === 'long' ? [] : [shape.column])],
    mapRow: row => {
      const origin = { cells: row.cells }
      try {
        refuseShape(row, { width: headings.length, separator })
        const cells = readers.map(read => read(row.cells))
        if (shape.kind === 'long') return [{ line: row.line, cells, fault: undefined, origin }]
        return readPieces(row.cells).map(piece => ({
          line: row.line,
          cells: [...cells, piece],
          fault: undefined,
          origin: { ...origin, piece },
        }))
      } catch (thrown) {
        if (thrown instanceof RowFault) return [{ line: row.line, cells: [], fault: thrown, origin }]
        throw thrown
      }
    },
  }
}

/** Empty cells after the last heading are nobody's: spreadsheets write as many as they please. */
function refuseShape(
  { cells, fault }: SourceRow,
  { width, separator }: { readonly width: number; readonly separator: string | null },
): void {
  if (fault !== undefined) throw fault
  const held = cells.findLastIndex(cell => cell.trim() !== '') + 1
  if (held > width)
    throw new RowFault('', wordWidth(held, { width, hint: 'put a cell with a separator in quotes' }))
  if (cells.length < width)
    throw new RowFault('', wordWidth(cells.length, { width, hint: 'write a separator for each empty cell' }))
  const swallowed = separator === null ? undefined : findSwallowedRows(cells, separator)
  if (swallowed !== undefined)
    throw new RowFault(
      '',
      `holds ${swallowed.lines} lines that look like rows of their own: close the quote before them`,
    )
}

function wordWidth(
  found: number,
  { width, hint }: { readonly width: number; readonly hint: string },
): string {
  return `has ${found} ${found === 1 ? 'cell' : 'cells'} where there are ${width} headings: ${hint}`
}
