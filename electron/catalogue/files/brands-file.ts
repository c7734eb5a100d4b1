import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { upsert } from '../loading/upsert.ts'

export const brandsFile = defineFile({
  name: 'brands.csv',
  row: z.object({ brand: word }),
  neededColumns: ['brand'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(1, database.tuples('SELECT name_key, name FROM brand'))
    return {
      take({ brand }, line) {
        const key = known.keyFor(brand, 'brand')
        return rows.write({ key: [key], values: [brand], line }, () => {
          const id = upsert(
            database,
            `INSERT INTO brand (name_key, name) VALUES (?, ?)
             ON CONFLICT (name_key) DO UPDATE SET name = excluded.name RETURNING brand_id AS id`,
            key,
            brand,
          )
          known.brands.set(key, id)
        })
      },
    }
  },
})
