import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { text, word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

export const dateCodesFile = defineFile({
  name: 'date_codes.csv',
  row: z.object({
    brand: word,
    pattern: word.superRefine((pattern, context) => {
      const fault = findPatternFault(pattern)
      if (fault !== undefined) context.addIssue({ code: 'custom', message: fault })
    }),
    means: text,
  }),
  neededColumns: ['brand', 'pattern'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(2, database.tuples('SELECT brand_id, pattern, means FROM date_code'))
    return {
      take({ brand, pattern, means }, line) {
        const brandId = known.brand(brand)
        return rows.write({ key: [brandId, pattern], values: [means], line }, () => {
          database.run(
            `INSERT INTO date_code (brand_id, pattern, means) VALUES (?, ?, ?)
             ON CONFLICT DO UPDATE SET means = excluded.means`,
            brandId,
            pattern,
            means,
          )
        })
      },
    }
  },
})

/** The pattern is read as the fit check will read it: as Unicode, with its groups by name. */
function findPatternFault(pattern: string): string | undefined {
  try {
    new RegExp(pattern, 'u')
  } catch (thrown) {
    return `“${pattern}” is no pattern (${thrown instanceof Error ? thrown.message : thrown}): mend it`
  }
  if (/\(\?<(year|week|month)>/.test(pattern)) return undefined
  return `“${pattern}” names no group: mark the digits that tell the date as (?<year>…), (?<week>…) or (?<month>…)`
}
