import { Refusal } from '../../requests/refusal.ts'
import type { CatalogueFile } from './catalogue-file.ts'

/** The names of the columns, exact and in any order. Unknown, missing and repeated ones are refused by name. */
export function checkHeader(file: CatalogueFile, path: string, cells: readonly string[]): readonly string[] {
  const header = cells.map(cell => cell.trim())
  const unknown = header.filter(column => !file.columns.includes(column))
  const missing = file.neededColumns.filter(column => !header.includes(column))
  const repeated = header.filter((column, at) => header.indexOf(column) < at)
  if (unknown.length + missing.length + repeated.length > 0)
    throw new Refusal({ code: 'wrong-header', file: path, unknown, missing, repeated })
  return header
}
