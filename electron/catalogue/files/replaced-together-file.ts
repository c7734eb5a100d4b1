import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { count, word, wordOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { RowFault } from '../loading/row-fault.ts'

/** One direction a row: a bearing may need its seal, and the seal go in without a bearing. */
export const replacedTogetherFile = defineFile({
  name: 'replaced_together.csv',
  row: z.object({ part_number: word, with_part: word, quantity: count(1), why: wordOrUnknown }),
  neededColumns: ['part_number', 'with_part', 'quantity'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      2,
      database.tuples('SELECT part_id, with_part_id, quantity, why FROM replaced_together'),
    )
    const named = new Set<number>()
    return {
      take({ part_number, with_part, quantity, why }, line) {
        const partId = known.part(part_number)
        const withPartId = known.part(with_part, { column: 'with_part' })
        if (partId === withPartId && quantity < 2)
          throw new RowFault(
            'quantity',
            `must be 2 or more where ${part_number} goes with itself: write the whole number to fit`,
          )
        named.add(partId)
        return rows.write({ key: [partId, withPartId], values: [quantity, why], line }, () => {
          database.run(
            `INSERT INTO replaced_together (part_id, with_part_id, quantity, why) VALUES (?, ?, ?, ?)
             ON CONFLICT DO UPDATE SET quantity = excluded.quantity, why = excluded.why`,
            partId,
            withPartId,
            quantity,
            why,
          )
        })
      },
      /** A part that the rows name is replaced together with what they name, and with nothing else any more. */
      retireUnsaid() {
        const unsaid = [...rows.unstated()].filter(([partId]) => named.has(Number(partId)))
        for (const key of unsaid)
          database.run(
            'DELETE FROM replaced_together WHERE part_id = ? AND with_part_id = ?',
            ...key.map(Number),
          )
        return unsaid.length
      },
    }
  },
})
