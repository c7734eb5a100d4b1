import path from 'node:path'
import { z } from 'zod'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { inTransaction, type ReadableDatabase, type WritableDatabase } from '../database/handles.ts'
import { orRefuse } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { bringTo, recordEvent } from './act-on-sheet.ts'
import type { SheetDocument, SheetFile } from './export/sheet-document.ts'
import type { writeSheetFiles } from './export/write-sheet-files.ts'
import { readBuyer, readOrdering } from './ordering-queries.ts'
import { readOrderSheet } from './read-order-sheet.ts'
import { type StoredSheet, sheetNumbered } from './sheet-queries.ts'
import { decideStage } from './sheet-states.ts'

/** What writes PDF and XML is fetched when something is first written, so that opening the shop does not wait for it. */
const fetchWriters = async () => ({
  ...(await import('./export/write-sheet-files.ts')),
  ...(await import('./export/write-folders.ts')),
})

/** Says that a checked sheet goes to its supplier, and keeps the files that go. */
export async function sendSheet(
  shop: Pick<Shop, 'database' | 'now' | 'device'>,
  { number, initials }: CheckedInput<'order-sheets.send-sheet'>,
): Promise<Output<'order-sheets.send-sheet'>> {
  const { writeSheetFiles } = await fetchWriters()
  return inTransaction(shop.database, database => {
    const stored = sheetNumbered(database, number)
    const { orderSheetId } = stored
    orRefuse(decideStage(stored, 'send'))
    for (const file of filesOf(database, stored, writeSheetFiles)) appendFile(database, orderSheetId, file)
    bringTo(database, number, 'send')
    return recordEvent(database, shop, { orderSheetId, number, what: 'sent', initials })
  })
}

/** Writes the files of sheets, a folder each: of a sheet that was sent the very bytes that went, of a checked one those that would. */
export async function exportSheets(
  database: ReadableDatabase,
  { numbers, folder: asked }: CheckedInput<'order-sheets.export-sheets'>,
): Promise<Output<'order-sheets.export-sheets'>> {
  const { writeSheetFiles, writeFolders } = await fetchWriters()
  const folder = path.resolve(asked)
  const written = [...new Set(numbers)].map(number => {
    const stored = sheetNumbered(database, number)
    orRefuse(decideStage(stored, 'export'))
    const name = `${number}-${stored.supplier.replaceAll(/[^\p{L}\p{N}_-]+/gu, '-')}`
    return { stored, name, files: filesOf(database, stored, writeSheetFiles) }
  })
  writeFolders(folder, written)
  return {
    folder,
    buyerIsNamed: readBuyer(database).isSaved,
    sheets: written.map(({ stored, name, files }) => {
      const { number, supplier, state, currency, total, lines } = readOrderSheet(database, stored)
      return {
        ...{ number, supplier, state, currency, value: total, lines: lines.length },
        files: files.map(file => path.join(folder, name, file.name)),
      }
    }),
  }
}

function filesOf(
  database: ReadableDatabase,
  stored: StoredSheet,
  write: typeof writeSheetFiles,
): readonly SheetFile[] {
  const kept = readKeptFiles(database, stored.orderSheetId)
  return kept.length > 0
    ? kept
    : write(gatherDocument(database, stored), readOrdering(database, stored.supplierId))
}

/** What goes to the supplier of a sheet that is checked. */
function gatherDocument(database: ReadableDatabase, stored: StoredSheet): SheetDocument {
  const sheet = readOrderSheet(database, stored)
  const gtins = readGtins(database, stored.orderSheetId)
  const checked = sheet.events.findLast(({ what }) => what === 'checked')
  return {
    number: sheet.number,
    date: (checked?.recordedAt ?? sheet.createdAt).slice(0, 10),
    currency: sheet.currency,
    buyer: readBuyer(database).buyer,
    supplier: {
      supplier: sheet.supplier,
      name: sheet.supplierName || sheet.supplier,
      account: readOrdering(database, stored.supplierId).account,
    },
    lines: sheet.lines.map(({ for: meant, supplierCode, ...line }) => ({
      ...line,
      supplierCode: supplierCode ?? line.partNumber,
      gtin: gtins.get(line.line) ?? null,
      job: meant.job ?? '',
    })),
    ...{ net: sheet.net, carriage: sheet.carriage, total: sheet.total },
  }
}

function readGtins(database: ReadableDatabase, orderSheetId: number): ReadonlyMap<number, string> {
  return new Map(
    database.tuples<[number, string]>(
      `SELECT line, gtin FROM order_sheet_line JOIN part USING (part_id)
       WHERE order_sheet_id = ? AND gtin IS NOT NULL`,
      orderSheetId,
    ),
  )
}

const fileRow = z.object({ name: z.string(), bytes: z.instanceof(Uint8Array) })

function readKeptFiles(database: ReadableDatabase, orderSheetId: number): SheetFile[] {
  return database.rows(
    fileRow,
    'SELECT name, bytes FROM order_sheet_file WHERE order_sheet_id = ? ORDER BY name',
    orderSheetId,
  )
}

function appendFile(database: WritableDatabase, orderSheetId: number, { name, bytes }: SheetFile): void {
  database.run(
    'INSERT INTO order_sheet_file (order_sheet_id, name, bytes) VALUES (?, ?, ?)',
    orderSheetId,
    name,
    bytes,
  )
}
