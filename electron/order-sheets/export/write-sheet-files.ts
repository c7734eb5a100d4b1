import type { OrderingLayout } from '../../../shared-schemas/order-sheets.ts'
import { Refusal } from '../../requests/refusal.ts'
import { drawOrderPdf } from './draw-order-pdf.ts'
import { findOrderFaults } from './find-order-faults.ts'
import type { SheetDocument, SheetFile } from './sheet-document.ts'
import { writeOrderCsv } from './write-order-csv.ts'
import { writeOrderMessage } from './write-order-message.ts'
import { writeOrderXml } from './write-order-xml.ts'

/** The files of a sheet. An order that our own rules find fault with is refused, and nothing of it is written. */
export function writeSheetFiles(sheet: SheetDocument, layout: OrderingLayout): SheetFile[] {
  const xml = writeOrderXml(sheet)
  const faults = findOrderFaults(xml)
  if (faults.length > 0) throw new Refusal({ code: 'sheet-not-exportable', number: sheet.number, faults })
  const encoder = new TextEncoder()
  const name = `order-${sheet.number}`
  return [
    { name: `${name}.csv`, bytes: encoder.encode(writeOrderCsv(sheet, layout)) },
    { name: `${name}.pdf`, bytes: drawOrderPdf(sheet) },
    { name: `${name}.txt`, bytes: encoder.encode(writeOrderMessage(sheet)) },
    { name: `${name}.xml`, bytes: encoder.encode(xml) },
  ]
}
