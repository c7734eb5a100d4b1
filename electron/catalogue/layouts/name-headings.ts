/** Headings as they are matched: on one line, without blanks round them; one that is empty is called by its place. */
export function nameHeadings(cells: readonly string[]): string[] {
  const last = cells.findLastIndex(cell => cell.trim() !== '')
  return cells.slice(0, last + 1).map((cell, at) => cell.replaceAll(/\s+/g, ' ').trim() || headingOfPlace(at))
}

/** What columns are called in a file without headings. */
export function placeHeadings(width: number): string[] {
  return Array.from({ length: width }, (_, at) => headingOfPlace(at))
}

function headingOfPlace(at: number): string {
  return `column ${at + 1}`
}
