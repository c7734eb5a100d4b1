import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { count, word, wordOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

/** What was there at the start. The book is moved only by the difference to what this file said before. */
export const openingStockFile = defineFile({
  name: 'opening_stock.csv',
  row: z.object({ location: word, part_number: word, quantity: count(0), bin: wordOrUnknown }),
  neededColumns: ['location', 'part_number', 'quantity'],
  open: ({ database, known, recordOpeningStock }) => {
    const rows = new KeyedRows(
      2,
      database.tuples('SELECT location_id, part_id, quantity, bin FROM opening_stock'),
    )
    return {
      take(row, line) {
        const locationId = known.location(row.location)
        const partId = known.part(row.part_number)
        const stated = { key: [locationId, partId], values: [row.quantity, row.bin], line }
        return rows.write(stated, before => {
          database.run(
            `INSERT INTO opening_stock (location_id, part_id, quantity, bin) VALUES (?, ?, ?, ?)
             ON CONFLICT DO UPDATE SET quantity = excluded.quantity, bin = excluded.bin`,
            locationId,
            partId,
            row.quantity,
            row.bin,
          )
          const quantityBefore = before === undefined ? null : Number(before[0])
          recordOpeningStock(database, { partId, locationId, before: quantityBefore, now: row.quantity })
        })
      },
    }
  },
})
