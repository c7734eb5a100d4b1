import type { PlateCell } from './plate-cells.ts'

/**
 * The plate text once an asked value is read: what was typed stays, the asked cells take the value, and a cell in
 * between is filled where every open model has the same there, else with `?`. Undefined where the value does not name
 * one character for each asked cell.
 */
export function fillAskedCells(cells: readonly PlateCell[], value: string): string | undefined {
  const characters = value.split(' ')
  const asked = cells.filter(isAsked)
  const fits = characters.length === asked.length && characters.every(one => /^[\p{L}\p{N}]$/u.test(one))
  if (asked.length === 0 || !fits) return undefined
  const lastWritten = cells.findLastIndex(
    cell => isAsked(cell) || cell.typedAt !== null || (cell.kind === 'character' && cell.typed !== ''),
  )
  let filled = 0
  return cells
    .slice(0, lastWritten + 1)
    .map(cell => {
      // The number takes the place of the sales name that covered it.
      if (cell.kind === 'name') return ''
      if (cell.kind !== 'character') return cell.text
      if (cell.isAsked) return characters[filled++] ?? '?'
      return cell.typed || cell.catalogue || '?'
    })
    .join('')
}

function isAsked(cell: PlateCell): boolean {
  return cell.kind === 'character' && cell.isAsked
}
