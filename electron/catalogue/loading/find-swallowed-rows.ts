/**
 * Which cell holds rows of its own, because a quote before them was meant to stand elsewhere; undefined where none does.
 * RFC 4180 cannot tell: to it, everything up to the next quote is one cell. But each row that a cell swallows brings
 * as many separators as the file has columns but one, and no description has so many on every line.
 */
export function findSwallowedRows(
  cells: readonly string[],
  separator = ',',
): { readonly at: number; readonly lines: number } | undefined {
  const partsOfRow = cells.length - 1
  for (const [at, cell] of cells.entries()) {
    if (!cell.includes('\n')) continue
    const breaks = countOf(cell, '\n')
    if (partsOfRow > 0 && countOf(cell, separator) >= breaks * partsOfRow) return { at, lines: breaks + 1 }
  }
  return undefined
}

function countOf(text: string, character: string): number {
  return text.split(character).length - 1
}
