import { writeCsv } from '../../shared-schemas/csv-text.ts'
import type { OrderedPart } from '../hand-over.ts'

/** The order with a further line, written as its first line says: under its headings, else as part number and quantity. */
export function addToDraft(text: string, line: OrderedPart): string {
  if (text.trim() === '') return writeCsv([Object.keys(cellsOf(line)), Object.values(cellsOf(line))])
  const [first = ''] = text.trimStart().split(/\r\n|\n|\r/, 1)
  const separator = first.includes('\t') ? '\t' : first.includes(';') && !first.includes(',') ? ';' : ','
  const names = first.split(separator).map(name =>
    name
      .trim()
      .toLowerCase()
      .replaceAll(/[\s-]+/g, '_'),
  )
  const columns = names.includes('part_number') ? names : ['part_number', 'quantity']
  const cells: Readonly<Record<string, string>> = cellsOf(line)
  const row = writeCsv([columns.map(column => cells[column] ?? '')], { separator })
  return `${text.trimEnd()}\r\n${row}`
}

function cellsOf({ part, quantity, brand, model }: OrderedPart) {
  return { part_number: part, quantity: `${quantity}`, brand, model_number: model }
}
