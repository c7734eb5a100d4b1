import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { text, wholeDate, word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

interface Used {
  readonly key: readonly [partId: number, date: string, locationId: number, job: string]
  quantity: number
  readonly lines: number[]
}

/** One part may be booked to a job more than once in a day, so the rows of one run add up before they are stored. */
export const usageFile = defineFile({
  name: 'usage.csv',
  row: z.object({
    date: wholeDate,
    location: word,
    part_number: word,
    quantity: z
      .string()
      .regex(
        /^-?[1-9]\d{0,8}$/,
        'is no quantity: write a whole number, with a minus for what came back unused',
      )
      .transform(Number),
    job: text,
  }),
  neededColumns: ['date', 'location', 'part_number', 'quantity'],
  open: ({ database, known }) => {
    const usedByKey = new Map<string, Used>()
    return {
      take(row, line) {
        const key = [known.part(row.part_number), row.date, known.location(row.location), row.job] as const
        const joined = key.join('\u001f')
        const used = usedByKey.get(joined) ?? { key, quantity: 0, lines: [] }
        used.quantity += row.quantity
        used.lines.push(line)
        usedByKey.set(joined, used)
        return 'later'
      },
      *finish() {
        const rows = new KeyedRows(
          4,
          database.tuples('SELECT part_id, date, location_id, job, quantity FROM usage'),
        )
        for (const { key, quantity, lines } of usedByKey.values()) {
          const outcome = rows.write({ key, values: [quantity], line: lines[0] ?? 0 }, () => {
            database.run(
              `INSERT INTO usage (part_id, date, location_id, job, quantity) VALUES (?, ?, ?, ?, ?)
               ON CONFLICT DO UPDATE SET quantity = excluded.quantity`,
              ...key,
              quantity,
            )
          })
          for (const line of lines) yield [line, outcome]
        }
      },
    }
  },
})
