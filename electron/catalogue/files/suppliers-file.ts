import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { countOrUnknown, decimalOrUnknown, text, word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { upsert } from '../loading/upsert.ts'

export const suppliersFile = defineFile({
  name: 'suppliers.csv',
  row: z.object({
    supplier: word,
    name: text,
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, 'is no currency code: write three capital letters (ISO 4217), as GBP'),
    minimum_order: decimalOrUnknown,
    carriage: decimalOrUnknown,
    carriage_paid_from: decimalOrUnknown,
    lead_days: countOrUnknown(0),
  }),
  neededColumns: ['supplier', 'currency'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      1,
      database.tuples(
        'SELECT supplier, name, currency, minimum_order, carriage, carriage_paid_from, lead_days FROM supplier',
      ),
    )
    return {
      take(row, line) {
        const values = [
          row.name || row.supplier,
          row.currency,
          row.minimum_order,
          row.carriage,
          row.carriage_paid_from,
          row.lead_days,
        ]
        return rows.write({ key: [row.supplier], values, line }, () => {
          const supplierId = upsert(
            database,
            `INSERT INTO supplier (supplier, name, currency, minimum_order, carriage, carriage_paid_from, lead_days)
             VALUES (?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT (supplier) DO UPDATE SET name = excluded.name, currency = excluded.currency,
               minimum_order = excluded.minimum_order, carriage = excluded.carriage,
               carriage_paid_from = excluded.carriage_paid_from, lead_days = excluded.lead_days
             RETURNING supplier_id AS id`,
            row.supplier,
            ...values,
          )
          known.suppliers.set(row.supplier, supplierId)
        })
      },
    }
  },
})
