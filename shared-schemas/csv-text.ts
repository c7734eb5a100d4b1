/**
 * CSV for people's spreadsheets (RFC 4180, lines ended by CR LF): the one writer of everything that is exported. Text
 * that a spreadsheet would run as a formula is guarded, figures stay figures, and `unguardCell` gives every text back.
 */
export function writeCsv(
  rows: readonly (readonly string[])[],
  { separator = ',' }: { readonly separator?: string } = {},
): string {
  return rows.map(row => `${row.map(formatCell).join(separator)}\r\n`).join('')
}

/** A row of one empty cell would be an empty line, which every reader passes over. */
function formatCell(cell: string, _at: number, row: readonly string[]): string {
  const harmless = guardCell(cell)
  const isPlain = harmless === '' ? row.length > 1 : !/[",;\t|\r\n]|^\s|\s$/.test(harmless)
  return isPlain ? harmless : `"${harmless.replaceAll('"', '""')}"`
}

/**
 * The characters with which a cell may begin to run are those that OWASP lists under “CSV Injection”: = + - @, tab and
 * line ends, and the wide forms of the first four. Blanks before them may be dropped by who opens the file.
 */
const running = /^'*(?:\s*[=+\-@＝＋－＠]|[\t\r\n])/
const guarded = /^'+(?:\s*[=+\-@＝＋－＠]|[\t\r\n])/
const figure = /^[+-]?\d+(?:[.,]\d+)*(?:[eE][+-]?\d+)?$/

/** An apostrophe before what would run; spreadsheets show such a cell as text. */
export function guardCell(text: string): string {
  return running.test(text) && !figure.test(text) ? `'${text}` : text
}

/** The text as it was before it was guarded. */
export function unguardCell(cell: string): string {
  return guarded.test(cell) ? cell.slice(1) : cell
}
