/** The cells of a line that ends where its row does: of which each quoted cell is closed on it, as RFC 4180 has it. */
export function splitPlainLine(line: string): string[] {
  if (!line.includes('"')) return line.split(',')
  const cells: string[] = []
  let at = 0
  for (;;) {
    const end = line[at] === '"' ? endOfQuoted(line, at) : at
    const comma = line.indexOf(',', end)
    const cell = line.slice(at, comma < 0 ? undefined : comma)
    cells.push(end > at ? cell.slice(1, -1).replaceAll('""', '"') : cell)
    if (comma < 0) return cells
    at = comma + 1
  }
}

/** The place after the quote that closes the cell. */
function endOfQuoted(line: string, start: number): number {
  let at = start + 1
  while (at < line.length) {
    if (line[at] !== '"') at += 1
    else if (line[at + 1] === '"') at += 2
    else return at + 1
  }
  return at
}
