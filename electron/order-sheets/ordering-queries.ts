import { z } from 'zod'
import {
  type BuyerDetails,
  columnHolds,
  type OrderingLayout,
  ourColumns,
} from '../../shared-schemas/order-sheets.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'

const buyerRow = z.object({
  name: z.string(),
  street: z.string(),
  town: z.string(),
  postcode: z.string(),
  country: z.string(),
  telephone: z.string(),
  email: z.string(),
})

/** Who orders, as it was saved; until then the shop by the name of its first location. */
export function readBuyer(database: ReadableDatabase): { buyer: BuyerDetails; isSaved: boolean } {
  const saved = database.row(
    buyerRow,
    'SELECT name, street, town, postcode, country, telephone, email FROM buyer',
  )
  if (saved !== undefined) return { buyer: saved, isSaved: true }
  const named = database.row(
    z.object({ name: z.string() }),
    `SELECT name FROM location WHERE kind = 'shop' AND name <> '' ORDER BY location`,
  )
  const unsaid = { street: '', town: '', postcode: '', country: '', telephone: '', email: '' }
  return { buyer: { name: named?.name ?? 'The shop', ...unsaid }, isSaved: false }
}

export function replaceBuyer(database: WritableDatabase, buyer: BuyerDetails): void {
  database.run('DELETE FROM buyer')
  database.run(
    `INSERT INTO buyer (only_row, name, street, town, postcode, country, telephone, email)
     VALUES (1, ?, ?, ?, ?, ?, ?, ?)`,
    buyer.name,
    buyer.street,
    buyer.town,
    buyer.postcode,
    buyer.country,
    buyer.telephone,
    buyer.email,
  )
}

const orderingRow = z.object({
  account: z.string(),
  separator: z.enum([',', ';', '\t', '|']),
  decimal_sign: z.enum(['.', ',']),
  date_order: z.enum(['ymd', 'dmy', 'mdy']),
})
const columnRow = z.object({ heading: z.string(), holds: columnHolds })

/** How a supplier wants its orders; ours where nobody said. */
export function readOrdering(database: ReadableDatabase, supplierId: number): OrderingLayout {
  const saved = database.row(
    orderingRow,
    'SELECT account, separator, decimal_sign, date_order FROM supplier_ordering WHERE supplier_id = ?',
    supplierId,
  )
  const columns = database.rows(
    columnRow,
    'SELECT heading, holds FROM supplier_order_column WHERE supplier_id = ? ORDER BY place',
    supplierId,
  )
  return {
    account: saved?.account ?? '',
    separator: saved?.separator ?? ',',
    decimalSign: saved?.decimal_sign ?? '.',
    dateOrder: saved?.date_order ?? 'ymd',
    columns: columns.length > 0 ? columns : [...ourColumns],
  }
}

export function replaceOrdering(
  database: WritableDatabase,
  supplierId: number,
  { account, separator, decimalSign, dateOrder, columns }: OrderingLayout,
): void {
  database.run('DELETE FROM supplier_ordering WHERE supplier_id = ?', supplierId)
  database.run(
    `INSERT INTO supplier_ordering (supplier_id, account, separator, decimal_sign, date_order)
     VALUES (?, ?, ?, ?, ?)`,
    supplierId,
    account,
    separator,
    decimalSign,
    dateOrder,
  )
  for (const [at, { heading, holds }] of columns.entries())
    database.run(
      'INSERT INTO supplier_order_column (supplier_id, place, heading, holds) VALUES (?, ?, ?, ?)',
      supplierId,
      at + 1,
      heading,
      holds,
    )
}
