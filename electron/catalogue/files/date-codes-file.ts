import { z } from 'zod'
import { dateGroups, readMeanings } from '../date-code-meaning.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { text, word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

export const dateCodesFile = defineFile({
  name: 'date_codes.csv',
  row: z.object({ brand: word, pattern: word, means: text }).superRefine(({ pattern, means }, context) => {
    const refuse = (column: string, message: string) =>
      context.addIssue({ code: 'custom', path: [column], message })
    const groups = listGroups(pattern)
    if (groups === undefined) return refuse('pattern', `“${pattern}” is no pattern: mend it`)
    if (!groups.includes('year'))
      return refuse('pattern', 'names no group for the year: put its characters in (?<year>…)')
    const unread = findUnreadMeaning(groups, means)
    if (unread !== undefined) refuse('means', unread)
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

/** The names of the groups; the pattern is compiled as the fit check will compile it. Undefined: it cannot be. */
function listGroups(pattern: string): readonly string[] | undefined {
  try {
    // An alternative of nothing lets it match anything, and a match names every group, taken or not.
    return Object.keys(new RegExp(`${pattern}|`, 'u').exec('')?.groups ?? {})
  } catch {
    return undefined
  }
}

/** Every group that is marked must be one that a date has, and whatever is said of the groups must be readable. */
function findUnreadMeaning(groups: readonly string[], means: string): string | undefined {
  const known: readonly string[] = dateGroups
  const stranger = groups.find(group => !known.includes(group))
  if (stranger !== undefined)
    return `the pattern marks “${stranger}”: only ${dateGroups.join(', ')} can be read`
  const meanings = readMeanings(means)
  if (meanings === undefined)
    return `“${means}” cannot be read: write year=2-digit;week=2-digit, year=letter A=2004 skip I O, or a list A=2010|B=2011`
  const unmarked = [...meanings.keys()].find(group => !groups.includes(group))
  return unmarked && `explains ${unmarked}, which the pattern does not mark`
}
