import Papa from 'papaparse'
import { type CatalogueFile, catalogueColumns, type SparseRow } from './catalogue-rows.ts'

/** The text of one catalogue file: RFC 4180, header first, every line ended by CR LF. */
export function writeCsv<File extends CatalogueFile>(file: File, rows: readonly SparseRow<File>[]): string {
  const fields: readonly string[] = catalogueColumns[file]
  const data = rows.map(row => {
    const cells: Readonly<Record<string, string | undefined>> = row
    return fields.map(field => cells[field] ?? '')
  })
  return `${Papa.unparse({ fields: [...fields], data }, { newline: '\r\n' })}\r\n`
}
