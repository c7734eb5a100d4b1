import { writeCsv } from './csv-text.ts'
import type { CheckedOrder, OrderLine, Severity } from './order-check.ts'

const columns = [
  'line',
  'part_number',
  'quantity',
  'brand',
  'model_number',
  'made',
  'serial',
  'verdict',
  'stops',
  'cautions',
  'notes',
] as const

export const checkedOrderHeader = columns.join(',')

/**
 * A checked order as CSV (RFC 4180): each line as it was written, then what the check found, several findings of one
 * kind separated by `|`. A cell that a spreadsheet would run as a formula is shown as text.
 */
export function writeCheckedOrder(given: readonly OrderLine[], { lines }: CheckedOrder): string {
  const rows = lines.map(({ line, partNumber, quantity, verdict, flags }, at) => {
    const { brand, modelNumber, made, serial, quantity: written } = given[at] ?? {}
    const found = (severity: Severity) =>
      flags
        .filter(flag => flag.severity === severity)
        .map(({ text }) => text)
        .join(' | ')
    const asked = [quantity ?? written, brand, modelNumber, made, serial].map(cell => String(cell ?? ''))
    return [String(line), partNumber, ...asked, verdict ?? '', found('stop'), found('caution'), found('note')]
  })
  return writeCsv([columns, ...rows])
}
