import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

export const dateCodesFile = defineFile({
  name: 'date_codes.csv',
  row: z.object({ brand: word, pattern: word, means: word }).superRefine(({ pattern, means }, context) => {
    const refuse = (column: string, message: string) =>
      context.addIssue({ code: 'custom', path: [column], message })
    const groups = listGroups(pattern)
    if (groups === undefined) return refuse('pattern', `“${pattern}” is no pattern: mend it`)
    if (!groups.includes('year'))
      return refuse('pattern', 'names no group for the year: put its characters in (?<year>…)')
    const unread = findUnreadMeaning(groups, means)
    if (unread !== undefined) refuse('means', unread)
  }),
  neededColumns: ['brand', 'pattern', 'means'],
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

/** Every group that is marked needs a meaning that the fit check can read, and nothing else is explained. */
function findUnreadMeaning(groups: readonly string[], means: string): string | undefined {
  const meanings = new Map(means.split(';').map(one => splitMeaning(one)))
  const stranger = [...meanings.keys(), ...groups].find(group => !knownGroups.includes(group))
  if (stranger !== undefined) return `speaks of “${stranger}”: only ${knownGroups.join(', ')} can be read`
  const bare = [...knownGroups].find(group => groups.includes(group) !== meanings.has(group))
  if (bare !== undefined)
    return `and the pattern must name the same groups, but “${bare}” is only in one of them`
  const [group, how] = [...meanings].find(([, how]) => !readableMeaning.test(how)) ?? []
  if (group === undefined) return undefined
  return `“${how}” is no meaning of ${group}: write 1-digit, 2-digit, 4-digit or letter A=2004 skip I O`
}

const knownGroups = ['year', 'week', 'month']
const readableMeaning = /^(?:[124]-digit|letter [A-Z]=\d+(?: skip [A-Z](?: [A-Z])*)?)$/

function splitMeaning(one: string): [group: string, how: string] {
  const at = one.indexOf('=')
  return [one.slice(0, Math.max(at, 0)).trim(), one.slice(at + 1).trim()]
}
