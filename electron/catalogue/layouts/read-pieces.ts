import type { Shape } from '../../../shared-schemas/supplier-layouts.ts'
import { RowFault } from '../loading/row-fault.ts'
import { listWideHeadings } from './layout-queries.ts'

/** Gives the many models of one row, each once, in their order. A row that names none is at fault. */
export function pieceReader(
  shape: Shape,
  headings: readonly string[],
): (cells: readonly string[]) => readonly string[] {
  if (shape.kind === 'long') return () => []
  const places = listWideHeadings(shape).map(heading => headings.indexOf(heading))
  const split = shape.kind === 'wide-cell' ? splitter(shape.separators) : (cell: string) => [cell]
  return cells => {
    const pieces = places.flatMap(at => split(cells[at] ?? '')).map(piece => piece.trim())
    const named = [...new Set(pieces.filter(piece => piece !== ''))]
    if (named.length === 0)
      throw new RowFault(shape.column, 'is empty: name at least one, or leave the row out')
    return named
  }
}

/** Parts a cell at any of the separators, each as it is written. */
function splitter(separators: readonly string[]): (cell: string) => string[] {
  const escaped = separators.map(separator => separator.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'))
  const any = new RegExp(escaped.join('|'))
  return cell => cell.split(any)
}
