import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { RowFault } from '../loading/row-fault.ts'

export const crossReferencesFile = defineFile({
  name: 'cross_references.csv',
  row: z.object({ number: word, part_number: word }),
  neededColumns: ['number', 'part_number'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(1, database.tuples('SELECT number_key, number, part_id FROM cross_reference'))
    return {
      take(row, line) {
        const key = known.keyFor(row.number, 'number')
        const partId = known.part(row.part_number)
        const owner = known.parts.get(key)
        if (owner !== undefined && owner !== partId)
          throw new RowFault(
            'number',
            `“${row.number}” is a part of its own: it cannot lead to another part too`,
          )
        return rows.write({ key: [key], values: [row.number, partId], line }, () => {
          database.run(
            `INSERT INTO cross_reference (number_key, number, part_id) VALUES (?, ?, ?)
             ON CONFLICT DO UPDATE SET number = excluded.number, part_id = excluded.part_id`,
            key,
            row.number,
            partId,
          )
        })
      },
    }
  },
})
