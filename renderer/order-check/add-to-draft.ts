import { writeCsv } from '../../shared-schemas/csv-text.ts'
import type { OrderedPart } from '../hand-over.ts'
import { readOrderColumns } from './order-columns.ts'

/** The order with a further line, written as its first line says: under its headings, else as part number and quantity. */
export function addToDraft(text: string, line: OrderedPart): string {
  if (text.trim() === '') return writeCsv([Object.keys(cellsOf(line)), Object.values(cellsOf(line))])
  const { names, separator } = readOrderColumns(text)
  const cells: Readonly<Record<string, string>> = cellsOf(line)
  const row = writeCsv([names.map(name => cells[name] ?? '')], { separator })
  return `${text.trimEnd()}\r\n${row}`
}

function cellsOf({ part, quantity, brand, model }: OrderedPart) {
  return { part_number: part, quantity: `${quantity}`, brand, model_number: model }
}
