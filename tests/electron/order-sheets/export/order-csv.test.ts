import fc from 'fast-check'
import papaparse from 'papaparse'
import { expect, test } from 'vitest'
import { writeOrderCsv } from '../../../../electron/order-sheets/export/write-order-csv.ts'
import { unguardCell } from '../../../../shared-schemas/csv-text.ts'
import { type OrderingLayout, ourColumns } from '../../../../shared-schemas/order-sheets.ts'
import { anyDocument, documentOf } from './sheet-documents.ts'

const ours: OrderingLayout = {
  account: '',
  separator: ',',
  decimalSign: '.',
  dateOrder: 'ymd',
  columns: [...ourColumns],
}

test('without a layout of the supplier’s, the columns are ours', () => {
  const sheet = documentOf([{ partNumber: '1E5', supplierCode: 'CAP-16' }])
  expect(writeOrderCsv(sheet, ours)).toBe(
    [
      'order_number,order_date,account,line,supplier_code,part_number,description,quantity,pack,unit_price,amount,currency',
      '2026-0007,2026-11-23,AC-20931,1,CAP-16,1E5,Sensor lead,2,1,3.335,6.67,GBP',
      '',
    ].join('\r\n'),
  )
})

test('a supplier’s own headings, order, separator, decimal sign and date', () => {
  const layout: OrderingLayout = {
    account: '',
    separator: ';',
    decimalSign: ',',
    dateOrder: 'dmy',
    columns: [
      { heading: 'Artikel', holds: 'supplier-code' },
      { heading: 'Aantal', holds: 'quantity' },
      { heading: '', holds: 'nothing' },
      { heading: 'Prijs', holds: 'unit-price' },
      { heading: 'Datum', holds: 'order-date' },
    ],
  }
  expect(writeOrderCsv(documentOf([{}]), layout)).toBe(
    'Artikel;Aantal;;Prijs;Datum\r\nD-9;2;;"3,335";23/11/2026\r\n',
  )
  expect(writeOrderCsv(documentOf([{}]), { ...layout, dateOrder: 'mdy' })).toContain('11/23/2026')
})

test('whatever is ordered, a reader of CSV gets every line back, and a spreadsheet runs none of it', () => {
  const anyLayout = fc.record({
    account: fc.constant(''),
    separator: fc.constantFrom<OrderingLayout['separator']>(',', ';', '\t', '|'),
    decimalSign: fc.constantFrom<OrderingLayout['decimalSign']>('.', ','),
    dateOrder: fc.constant<'ymd'>('ymd'),
    columns: fc.constant(ours.columns),
  })
  fc.assert(
    fc.property(anyDocument, anyLayout, (sheet, layout) => {
      const text = writeOrderCsv(sheet, layout)
      const { data, errors } = papaparse.parse<string[]>(text.replace(/\r\n$/, ''), {
        delimiter: layout.separator,
        newline: '\r\n',
      })
      expect(errors).toEqual([])
      const [, ...rows] = data
      const price = (cell: string | undefined) => (cell ?? '').replace(layout.decimalSign, '.')
      expect(rows.map(row => [row[4], row[5], row[6]].map(cell => unguardCell(cell ?? '')))).toEqual(
        sheet.lines.map(line => [line.supplierCode, line.partNumber, line.description]),
      )
      expect(rows.map(row => [row[7], price(row[9]), price(row[10])])).toEqual(
        sheet.lines.map(line => [String(line.quantity), line.unitPrice, line.amount]),
      )
      // What OWASP lists under “CSV Injection” as able to begin a formula; figures are harmless.
      const running = rows
        .flat()
        .filter(cell => /^\s*[=+\-@\t\r]/.test(cell) && !/^[+-]?[\d.,]+(e[+-]?\d+)?$/i.test(cell))
      expect(running).toEqual([])
    }),
    { numRuns: 200 },
  )
})
