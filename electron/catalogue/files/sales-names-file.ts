import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

export const salesNamesFile = defineFile({
  name: 'sales_names.csv',
  row: z.object({ brand: word, sales_name: word, model_number: word }),
  neededColumns: ['brand', 'sales_name', 'model_number'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      3,
      database.tuples('SELECT sales_key, brand_id, model_id, sales_name FROM sales_name'),
    )
    return {
      take(row, line) {
        const modelId = known.model(row.brand, row.model_number)
        const key = [known.keyFor(row.sales_name, 'sales_name'), known.brand(row.brand), modelId]
        return rows.write({ key, values: [row.sales_name], line }, () => {
          database.run(
            `INSERT INTO sales_name (sales_key, brand_id, model_id, sales_name) VALUES (?, ?, ?, ?)
             ON CONFLICT DO UPDATE SET sales_name = excluded.sales_name`,
            ...key,
            row.sales_name,
          )
        })
      },
    }
  },
})
