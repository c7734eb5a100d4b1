import {
  type Certainty,
  type Separator,
  type SeparatorFound,
  separators,
} from '../../../shared-schemas/supplier-layouts.ts'
import { CsvParser } from './csv-parser.ts'
import type { SourceRow } from './source-rows.ts'

/**
 * What parts the cells of these first lines. It is certain where only one separator makes rows of several cells, or
 * only one makes every row as wide as the first; a file of one column reads the same with any.
 */
export function findSeparator(text: string, { isWhole }: { readonly isWhole: boolean }): SeparatorFound {
  const tries = separators
    .map(separator => trySeparator(text, { separator, isWhole }))
    .sort((one, other) => Number(other.isEven) - Number(one.isEven) || other.cells - one.cells)
  const parting = tries.filter(({ parts }) => parts)
  const even = tries.filter(({ isEven }) => isEven)
  const best = tries[0]
  if (best === undefined) throw new Error('there are separators to try')
  const options = (parting.length > 0 ? parting : tries).map(({ separator, cells }) => ({ separator, cells }))
  const found = (separator: Separator, certainty: Certainty, why: string) => ({
    separator,
    certainty,
    why,
    options,
  })
  if (parting.length === 0)
    return found(',', 'certain', 'there is one column, which any separator reads alike')
  const name = wordSeparator(best.separator)
  if (parting.length === 1 && best.parts)
    return found(best.separator, 'certain', `only ${name} parts its lines`)
  if (even.length === 1)
    return found(best.separator, 'certain', `only with ${name} every row is as wide as the first`)
  return even.length > 1
    ? found(best.separator, 'likely', `with ${name} every row is as wide as the first, and with others too`)
    : found(best.separator, 'open', 'with no separator every row is as wide as the first')
}

interface Try {
  readonly separator: Separator
  /** How many cells the first row has. */
  readonly cells: number
  /** Whether any row has several cells. */
  readonly parts: boolean
  /** Whether every row has several cells, and as many as the first. */
  readonly isEven: boolean
}

function trySeparator(text: string, { separator, isWhole }: { separator: Separator; isWhole: boolean }): Try {
  const rows = parseSample(text, { separator, isWhole })
  const cells = rows[0]?.cells.length ?? 0
  const parts = rows.some(row => row.cells.length > 1)
  const isEven = cells > 1 && rows.every(row => row.cells.length === cells && row.fault === undefined)
  return { separator, cells, parts, isEven }
}

const mostRows = 200

function parseSample(
  text: string,
  { separator, isWhole }: { separator: Separator; isWhole: boolean },
): SourceRow[] {
  const parser = new CsvParser('', { separator, firstLine: 1 })
  const rows = parser.parse(text)
  return [...rows, ...(isWhole ? parser.end() : [])].slice(0, mostRows)
}

export function wordSeparator(separator: string): string {
  switch (separator) {
    case ',':
      return 'the comma'
    case ';':
      return 'the semicolon'
    case '\t':
      return 'the tab'
    case '|':
      return 'the bar |'
    default:
      return `“${separator}”`
  }
}
