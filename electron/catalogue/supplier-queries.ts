import { z } from 'zod'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'

const supplierRow = z.object({
  supplier_id: z.int(),
  supplier: z.string(),
  name: z.string(),
  currency: z.string(),
  minimum_order: z.string().nullable(),
  carriage: z.string().nullable(),
  carriage_paid_from: z.string().nullable(),
})

export type Supplier = ReturnType<typeof asSupplier>

/** Every supplier with its terms, by name. */
export function listSuppliers(database: ReadableDatabase): Supplier[] {
  return database
    .rows(
      supplierRow,
      `SELECT supplier_id, supplier, name, currency, minimum_order, carriage, carriage_paid_from
       FROM supplier ORDER BY supplier`,
    )
    .map(asSupplier)
}

/** The supplier with this name, in capitals or not; without one, a refusal that names those there are. */
export function supplierNamed(database: ReadableDatabase, typed: string): Supplier {
  const suppliers = listSuppliers(database)
  const found = suppliers.find(({ supplier }) => supplier.toUpperCase() === typed.toUpperCase())
  if (found !== undefined) return found
  throw new Refusal({
    code: 'supplier-not-found',
    typed,
    known: suppliers.map(({ supplier }) => supplier),
  })
}

function asSupplier(row: z.output<typeof supplierRow>) {
  return {
    supplierId: row.supplier_id,
    supplier: row.supplier,
    name: row.name,
    currency: row.currency,
    minimumOrder: row.minimum_order,
    carriage: row.carriage,
    carriagePaidFrom: row.carriage_paid_from,
  }
}
