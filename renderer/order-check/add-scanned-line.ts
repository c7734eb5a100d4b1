import { writeCsv } from '../../shared-schemas/csv-text.ts'

/**
 * The order with scanned pieces of a part added: to its last line where that is this part's and says no more than a
 * quantity, otherwise as a line of its own. The columns are those of the order; an empty order is given two.
 */
export function addScannedLine(text: string, part: string, pieces: number): string {
  if (text.trim() === '') return `part_number,quantity\n${lineOf([part, String(pieces)], ',')}\n`
  const lines = text.replace(/\s+$/, '').split(/\r\n|\n|\r/)
  const [first = ''] = lines
  const separator = separatorOf(first)
  const columns = columnsOf(first, separator)
  const asLine = (quantity: number) =>
    lineOf(
      columns.map(column =>
        column === 'part_number' ? part : column === 'quantity' ? String(quantity) : '',
      ),
      separator,
    )
  const last = lines.at(-1) ?? ''
  const before = Number(/\d+(?=\D*$)/.exec(last)?.[0] ?? 0)
  if (columns.includes('quantity') && before > 0 && last === asLine(before))
    return `${[...lines.slice(0, -1), asLine(before + pieces)].join('\n')}\n`
  return `${[...lines, asLine(pieces)].join('\n')}\n`
}

/** As the check reads it: a spreadsheet pastes tabs, and some write semicolons. */
function separatorOf(first: string): string {
  if (first.includes('\t')) return '\t'
  return first.includes(';') && !first.includes(',') ? ';' : ','
}

/** Without named columns they are the part's number and the quantity. */
function columnsOf(first: string, separator: string): string[] {
  const names = first.split(separator).map(name =>
    name
      .trim()
      .toLowerCase()
      .replaceAll(/[\s-]+/g, '_'),
  )
  return names.includes('part_number') ? names : ['part_number', 'quantity']
}

function lineOf(cells: readonly string[], separator: string): string {
  return writeCsv([cells], { separator }).replace(/\r\n$/, '')
}
