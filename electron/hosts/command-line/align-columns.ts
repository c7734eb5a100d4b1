/** Rows of text as lines whose columns stand under each other. The last column runs free. */
export function alignColumns(
  rows: readonly (readonly string[])[],
  rightAligned: readonly number[] = [],
): string[] {
  const widths: number[] = []
  for (const row of rows)
    for (const [at, cell] of row.entries()) widths[at] = Math.max(widths[at] ?? 0, cell.length)
  return rows.map(row =>
    row
      .map((cell, at) => {
        if (rightAligned.includes(at)) return cell.padStart(widths[at] ?? 0)
        return at === row.length - 1 ? cell : cell.padEnd(widths[at] ?? 0)
      })
      .join('  ')
      .trimEnd(),
  )
}
