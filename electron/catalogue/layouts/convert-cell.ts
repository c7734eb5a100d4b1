import type { ColumnMatch } from '../../../shared-schemas/supplier-layouts.ts'
import { RowFault } from '../loading/row-fault.ts'
import { convertDate } from './convert-date.ts'
import { type Converted, convertNumber } from './convert-number.ts'

/** Gives one column of ours its cell, out of the cells of a row of theirs; throws a `RowFault` that names ours. */
export function columnReader(
  match: ColumnMatch,
  headings: readonly string[],
): (cells: readonly string[]) => string {
  const { constant, heading, words } = match
  if (constant !== null) return () => constant
  const at = headings.indexOf(heading ?? '')
  const ours = new Map(words.map(word => [word.theirs.trim().toLowerCase(), word.ours]))
  return cells => {
    const cell = cells[at]?.trim() ?? ''
    const word = ours.get(cell.toLowerCase())
    if (word !== undefined) return word
    if (cell === '') return ''
    if (isSheetError(cell)) throw new RowFault(match.column, wordSheetError(cell))
    const converted = convert(cell, match)
    if (!converted.ok) throw new RowFault(match.column, converted.reason)
    return converted.text
  }
}

function convert(cell: string, { decimalSign, thousands, dateOrder }: ColumnMatch): Converted {
  if (decimalSign !== null) return convertNumber(cell, { decimalSign, thousands })
  return dateOrder === null ? { ok: true, text: cell } : convertDate(cell, dateOrder)
}

/** What spreadsheets show where a formula came to nothing (ECMA-376 part 1, 18.18.11, and newer ones). */
export function isSheetError(cell: string): boolean {
  return /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA|SPILL!|CALC!|FIELD!)$/.test(cell)
}

function wordSheetError(cell: string): string {
  return `holds ${cell}, the error of a formula: write what belongs there`
}
