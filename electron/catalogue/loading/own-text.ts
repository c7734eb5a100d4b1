/**
 * The same text in memory of its own. A cell is a window on the piece of the file that it was cut from, and whoever keeps
 * the cell keeps all of that: with a few thousand cells, the whole file.
 */
export function ownText(cell: string): string {
  return Buffer.from(cell, 'utf16le').toString('utf16le')
}
