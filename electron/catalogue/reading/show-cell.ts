import { type CellObject, SSF } from '@e965/xlsx'

/**
 * What a cell of a sheet says, as text. Text stays as it is. A number reads as the sheet shows it, its leading zeros
 * with it, but without signs between thousands, so that it cannot be taken for a decimal; a whole number of no format
 * keeps all its digits. A date comes out as 2014-06-17, or as the month or year where no more is shown.
 */
export function showCell(cell: CellObject | undefined, { from1904 }: { readonly from1904: boolean }): string {
  if (cell === undefined) return ''
  const { v: value, w: shown, z: format = 'General', t: type } = cell
  if (type === 'n' && typeof value === 'number')
    return showNumber(value, { shown, format: String(format), from1904 })
  if (type === 'b') return value === true ? 'yes' : 'no'
  if (type === 'e') return shown ?? '#VALUE!'
  return typeof value === 'string' ? value : (shown ?? '')
}

interface NumberShown {
  readonly shown: string | undefined
  readonly format: string
  readonly from1904: boolean
}

const mostDigits = 1e15

function showNumber(value: number, { shown = String(value), format, from1904 }: NumberShown): string {
  if (SSF.is_date(format)) return showDate(value, { shown, format, from1904 })
  if (format === 'General')
    return Number.isInteger(value) && Math.abs(value) < mostDigits ? String(value) : shown
  return /^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(shown.trim()) ? shown.trim().replaceAll(',', '') : shown.trim()
}

function showDate(value: number, { shown = '', format, from1904 }: NumberShown): string {
  const parsed = SSF.parse_date_code(value, { date1904: from1904 }) as DateParts | null
  const { year, month, day } = namedParts(format)
  if (parsed === null || !year) return shown
  const digits = (part: number, width: number) => String(part).padStart(width, '0')
  const parts = [
    digits(parsed.y, 4),
    ...(month ? [digits(parsed.m, 2), ...(day ? [digits(parsed.d, 2)] : [])] : []),
  ]
  return parts.join('-')
}

interface DateParts {
  readonly y: number
  readonly m: number
  readonly d: number
}

/** Which parts of a date its format shows. An m is a minute only beside an hour or a second, and then a day stands before it. */
function namedParts(format: string): {
  readonly year: boolean
  readonly month: boolean
  readonly day: boolean
} {
  const letters = format
    .replaceAll(/"[^"]*"|\[[^\]]*\]|\\./g, '')
    .split(';', 1)
    .join()
    .toLowerCase()
  return { year: letters.includes('y'), month: letters.includes('m'), day: letters.includes('d') }
}
