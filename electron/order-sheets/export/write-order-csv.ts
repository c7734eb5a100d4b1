import { writeCsv } from '../../../shared-schemas/csv-text.ts'
import type { ColumnHolds, OrderingLayout } from '../../../shared-schemas/order-sheets.ts'
import type { DocumentLine, SheetDocument } from './sheet-document.ts'

/** The lines as a supplier wants them: its headings, in its order, with its separator, decimal sign and dates. */
export function writeOrderCsv(sheet: SheetDocument, layout: OrderingLayout): string {
  const header = layout.columns.map(({ heading }) => heading)
  const rows = sheet.lines.map(line => layout.columns.map(({ holds }) => cellOf(holds, line, sheet, layout)))
  return writeCsv([header, ...rows], layout)
}

function cellOf(
  holds: ColumnHolds,
  line: DocumentLine,
  sheet: SheetDocument,
  { decimalSign, dateOrder }: OrderingLayout,
): string {
  const decimal = (amount: string) => amount.replace('.', decimalSign)
  switch (holds) {
    case 'order-number':
      return sheet.number
    case 'order-date':
      return wordDate(sheet.date, dateOrder)
    case 'account':
      return sheet.supplier.account
    case 'line':
      return String(line.line)
    case 'supplier-code':
      return line.supplierCode
    case 'part-number':
      return line.partNumber
    case 'description':
      return line.description
    case 'gtin':
      return line.gtin ?? ''
    case 'quantity':
      return String(line.quantity)
    case 'pack':
      return String(line.pack)
    case 'unit-price':
      return decimal(line.unitPrice)
    case 'amount':
      return decimal(line.amount)
    case 'currency':
      return sheet.currency
    case 'job':
      return line.job
    case 'nothing':
      return ''
  }
}

function wordDate(date: string, order: OrderingLayout['dateOrder']): string {
  const [year, month, day] = date.split('-')
  if (order === 'ymd') return date
  return (order === 'dmy' ? [day, month, year] : [month, day, year]).join('/')
}
