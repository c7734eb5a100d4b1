import type { DocumentLine, SheetDocument } from './sheet-document.ts'

/** The order as the text of an e-mail: its subject in the first line, then a table that any typeface keeps in columns. */
export function writeOrderMessage(sheet: SheetDocument): string {
  const { number, date, buyer, supplier, currency } = sheet
  const account = supplier.account === '' ? [] : [`Our account with you: ${supplier.account}`]
  const address = [buyer.street, [buyer.postcode, buyer.town].filter(said).join(' '), buyer.country]
  const lines = [
    `Order ${number} of ${wordDay(date)}`,
    '',
    supplier.name,
    '',
    'Please supply:',
    '',
    ...alignTable(sheet.lines.map(rowOf)),
    '',
    `Lines ${currency} ${sheet.net}`,
    `Carriage ${currency} ${sheet.carriage}`,
    `In all ${currency} ${sheet.total}`,
    '',
    `Please put our order number ${number} on the delivery note.`,
    ...account,
    '',
    buyer.name,
    ...[...address, buyer.telephone, buyer.email].filter(said),
  ]
  return lines.map(line => `${line.trimEnd()}\r\n`).join('')
}

const months = 'January February March April May June July August September October November December'.split(
  ' ',
)

/** `23 November 2026`. */
export function wordDay(date: string): string {
  const [year, month, day] = date.split('-')
  return `${Number(day)} ${months[Number(month) - 1]} ${year}`
}

function said(text: string): boolean {
  return text !== ''
}

const header = ['Line', 'Your number', 'Part number', 'Pieces', 'Each', 'Amount', 'Description']
const figures = [0, 3, 4, 5]

function rowOf(line: DocumentLine): string[] {
  return [
    String(line.line),
    line.supplierCode,
    line.partNumber,
    String(line.quantity),
    line.unitPrice,
    line.amount,
    line.description,
  ]
}

function alignTable(rows: readonly (readonly string[])[]): string[] {
  const all = [header, ...rows]
  const widths = header.map((_, at) => Math.max(...all.map(row => [...(row[at] ?? '')].length)))
  return all.map(row =>
    row
      .map((cell, at) => {
        const pad = ' '.repeat((widths[at] ?? 0) - [...cell].length)
        return figures.includes(at) ? pad + cell : cell + pad
      })
      .join('  '),
  )
}
