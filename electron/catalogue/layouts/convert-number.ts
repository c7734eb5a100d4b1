import type { ColumnMatch } from '../../../shared-schemas/supplier-layouts.ts'

export type Converted =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly reason: string }

export interface NumberSigns {
  readonly decimalSign: NonNullable<ColumnMatch['decimalSign']>
  readonly thousands: boolean
}

/**
 * A figure with the decimal sign that was named, written with a point. The other sign is never taken for it: 1.234 in a
 * column of decimal commas is refused, unless thousands are said to be parted. Ranges and alternatives are figures too.
 */
export function convertNumber(cell: string, signs: NumberSigns): Converted {
  const parts = cell.split(/\s*(\.\.|[-/])\s*/)
  const converted = parts.map((part, at) => (at % 2 === 1 ? part : convertOne(part, signs)))
  return converted.every(part => part !== undefined)
    ? { ok: true, text: converted.join('') }
    : { ok: false, reason: wordWrong(cell, signs) }
}

function convertOne(part: string, { decimalSign, thousands }: NumberSigns): string | undefined {
  if (plain[decimalSign].test(part)) return part.replace(',', '.')
  if (!thousands || !parted[decimalSign].test(part)) return undefined
  const [whole = '', fraction] = part.split(decimalSign)
  const digits = whole.replaceAll(/\D/g, '')
  return fraction === undefined ? digits : `${digits}.${fraction}`
}

const plain = { '.': /^\d+(?:\.\d+)?$/, ',': /^\d+(?:,\d+)?$/ } as const
const parted = {
  '.': /^\d{1,3}(?:[,' \u00a0\u202f’]\d{3})+(?:\.\d+)?$/,
  ',': /^\d{1,3}(?:[.' \u00a0\u202f’]\d{3})+(?:,\d+)?$/,
} as const

function wordWrong(cell: string, { decimalSign, thousands }: NumberSigns): string {
  const [name, example, large] =
    decimalSign === '.' ? ['point', '12.50', '1,250.00'] : ['comma', '12,50', '1.250,00']
  const examples = thousands ? `${example} or ${large}` : example
  return `“${cell}” is no figure in a column whose decimal sign is a ${name}: write ${examples}`
}
