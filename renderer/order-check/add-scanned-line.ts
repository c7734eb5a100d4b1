import { writeCsv } from '../../shared-schemas/csv-text.ts'
import { readOrderColumns } from './order-columns.ts'

/**
 * The order with scanned pieces of a part added: to its last line where that is this part's and says no more than a
 * quantity, otherwise as a line of its own. The columns are those of the order; an empty order is given two.
 */
export function addScannedLine(text: string, part: string, pieces: number): string {
  if (text.trim() === '') return addScannedLine('part_number,quantity', part, pieces)
  const lines = text.replace(/\s+$/, '').split(/\r\n|\n|\r/)
  const { names, separator } = readOrderColumns(text)
  const lineOf = (quantity: number) => {
    const cells: Readonly<Record<string, string>> = { part_number: part, quantity: String(quantity) }
    return writeCsv([names.map(name => cells[name] ?? '')], { separator }).replace(/\r\n$/, '')
  }
  const last = lines.at(-1) ?? ''
  const before = Number(/\d+(?=\D*$)/.exec(last)?.[0] ?? 0)
  const isSame = names.includes('quantity') && before > 0 && last === lineOf(before)
  const kept = isSame ? lines.slice(0, -1) : lines
  return `${[...kept, lineOf(isSame ? before + pieces : pieces)].join('\n')}\n`
}
