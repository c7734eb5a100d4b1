import type { ColumnMatch } from '../../../shared-schemas/supplier-layouts.ts'
import { isPartialDate } from '../loading/partial-date.ts'
import type { Converted } from './convert-number.ts'

type DateOrder = NonNullable<ColumnMatch['dateOrder']>

/**
 * A date in figures as 2014-06-17, 2014-06 or 2014. One that begins with four figures is always year first; of others
 * the order was named. A year of two figures is refused: nobody wrote which century. A time of day is left out.
 */
export function convertDate(cell: string, order: DateOrder): Converted {
  const parts = splitDate(cell)
  const read = parts === undefined ? undefined : readParts(parts, order)
  if (read !== undefined && isPartialDate(read)) return { ok: true, text: read }
  return {
    ok: false,
    reason: `“${cell}” is no date in the order ${orders[order]}: write 2014, 2014-06 or 2014-06-17`,
  }
}

const orders = { ymd: 'year, month, day', dmy: 'day, month, year', mdy: 'month, day, year' } as const

/** What a date was meant to be, in whatever order: only where one reading is possible. */
export function guessDate(cell: string): string | undefined {
  const parts = splitDate(cell)
  if (parts === undefined) return undefined
  const readings = (['ymd', 'dmy', 'mdy'] as const).map(order => readParts(parts, order))
  const possible = new Set(readings.filter(read => read !== undefined && isPartialDate(read)))
  return possible.size === 1 ? [...possible][0] : undefined
}

/** Figures with one kind of mark between them, or run together with the year first. */
function splitDate(cell: string): string[] | undefined {
  const bare = cell.trim().replace(/[T ]+\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?Z?$/, '')
  const runTogether = /^((?:19|20)\d\d)(\d\d)(\d\d)?$/.exec(bare)
  if (runTogether !== null) return runTogether.slice(1).filter(part => part !== undefined)
  const isParted = /^\d{1,4}(?:\s*([./-]|\s)\s*\d{1,4}(?:\s*\1\s*\d{1,4})?)?$/.test(bare)
  return isParted ? bare.split(/[./\s-]+/) : undefined
}

function readParts(parts: readonly string[], order: DateOrder): string | undefined {
  const yearFirst = parts[0]?.length === 4
  const year = yearFirst ? parts[0] : parts.at(-1)
  const rest = yearFirst ? parts.slice(1) : parts.slice(0, -1)
  if (year?.length !== 4 || rest.some(part => part.length > 2)) return undefined
  const [first, second] = rest
  if (first === undefined) return year
  if (second === undefined) return `${year}-${twoDigits(first)}`
  if (!yearFirst && order === 'ymd') return undefined
  const [month, day] = yearFirst || order === 'mdy' ? [first, second] : [second, first]
  return `${year}-${twoDigits(month)}-${twoDigits(day)}`
}

function twoDigits(part: string): string {
  return part.padStart(2, '0')
}
