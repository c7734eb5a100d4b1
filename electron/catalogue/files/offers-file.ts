import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { countOr, decimal, word, wordOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

export const offersFile = defineFile({
  name: 'offers.csv',
  row: z.object({
    supplier: word,
    part_number: word,
    supplier_code: wordOrUnknown,
    price: decimal.refine(
      price => Number(price) > 0,
      'must be above 0: leave the row out when there is no price',
    ),
    from_quantity: countOr(1),
    pack: countOr(1),
    minimum: countOr(1),
  }),
  neededColumns: ['supplier', 'part_number', 'price'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      3,
      database.tuples(
        'SELECT part_id, supplier_id, from_quantity, supplier_code, price, pack, minimum FROM offer',
      ),
    )
    const suppliers = new Set<number>()
    return {
      take(row, line) {
        const supplierId = known.supplier(row.supplier)
        suppliers.add(supplierId)
        const key = [known.part(row.part_number), supplierId, row.from_quantity]
        const values = [row.supplier_code, row.price, row.pack, row.minimum]
        return rows.write({ key, values, line }, () => {
          database.run(
            `INSERT INTO offer (part_id, supplier_id, from_quantity, supplier_code, price, pack, minimum)
             VALUES (?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT DO UPDATE SET supplier_code = excluded.supplier_code, price = excluded.price,
               pack = excluded.pack, minimum = excluded.minimum`,
            ...key,
            ...values,
          )
        })
      },
      retireUnsaid() {
        const unsaid = [...rows.unstated()].filter(([, supplierId]) => suppliers.has(Number(supplierId)))
        for (const key of unsaid)
          database.run(
            'DELETE FROM offer WHERE part_id = ? AND supplier_id = ? AND from_quantity = ?',
            ...key.map(Number),
          )
        return unsaid.length
      },
    }
  },
})
