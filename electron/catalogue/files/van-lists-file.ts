import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { count, word, wordOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { checkOneSubject } from '../loading/subject.ts'

export const vanListsFile = defineFile({
  name: 'van_lists.csv',
  row: z
    .object({ van: word, family: wordOrUnknown, part_number: wordOrUnknown, level: count(0) })
    .superRefine(checkOneSubject),
  neededColumns: ['van', 'level'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      3,
      database.tuples('SELECT location_id, family_id, part_id, level FROM van_list'),
    )
    return {
      take({ van, family, part_number, level }, line) {
        const key = [
          known.van(van),
          family === null ? null : known.family(family),
          part_number === null ? null : known.part(part_number),
        ]
        return rows.write({ key, values: [level], line }, () => {
          database.run(
            `INSERT INTO van_list (location_id, family_id, part_id, level) VALUES (?, ?, ?, ?)
             ON CONFLICT (location_id, ifnull(family_id, 0), ifnull(part_id, 0)) DO UPDATE SET level = excluded.level`,
            ...key,
            level,
          )
        })
      },
    }
  },
})
