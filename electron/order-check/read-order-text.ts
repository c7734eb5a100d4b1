import papaparse from 'papaparse'
import { mostOrderLines, type OrderLine, orderColumns } from '../../shared-schemas/order-check.ts'
import type { Decided } from '../requests/refusal.ts'

type Column = (typeof orderColumns)[number]

/**
 * The lines of an order from CSV text, or from rows pasted out of a spreadsheet: with a header of the known names in
 * any order, or without one as part number and quantity. Each carries the line of the text on which it begins.
 */
export function readOrderText({
  text,
  name,
}: {
  readonly text: string
  readonly name: string
}): Decided<OrderLine[]> {
  const plain = text.replace(/^\ufeff/, '')
  const parsed = papaparse.parse<string[]>(plain, { delimiter: findSeparator(plain) })
  const unclosed = parsed.errors.find(({ type }) => type === 'Quotes')
  if (unclosed !== undefined)
    return unreadable(
      name,
      `a quotation mark in row ${(unclosed.row ?? 0) + 1} is not closed as it should be`,
    )
  const rows = numberRows(parsed.data)
  const [first, ...rest] = rows
  if (first === undefined) return unreadable(name, 'no line of an order stands in it')
  const header = readHeader(first.cells)
  if (header.kind === 'wrong')
    return {
      ok: false,
      problem: { code: 'wrong-header', file: name, ...header.faults },
    }
  const lines = header.kind === 'none' ? rows : rest
  if (lines.length === 0) return unreadable(name, 'no line of an order stands under its header')
  if (lines.length > mostOrderLines)
    return unreadable(
      name,
      `it has ${lines.length.toLocaleString('en')} lines, and ${mostOrderLines.toLocaleString('en')} are the most that one check takes`,
    )
  const columns = header.kind === 'none' ? withoutHeader : header.columns
  const wide = lines.find(({ cells }) => cells.slice(columns.length).some(cell => cell.trim() !== ''))
  if (wide !== undefined)
    return unreadable(
      name,
      `line ${wide.line} has ${wide.cells.length} cells where ${columns.length} are named`,
    )
  return { ok: true, value: lines.map(({ line, cells }) => asLine(line, cells, columns)) }
}

function unreadable(file: string, why: string): Decided<never> {
  return { ok: false, problem: { code: 'file-unreadable', file, why } }
}

/** A spreadsheet pastes tabs; some write semicolons where the comma is the decimal sign. The first line tells. */
function findSeparator(text: string): string {
  const [first = ''] = text.trimStart().split(/\r\n|\n|\r/, 1)
  const bare = first.replaceAll(/"(?:[^"]|"")*"/g, '')
  if (bare.includes('\t')) return '\t'
  return bare.includes(';') && !bare.includes(',') ? ';' : ','
}

interface NumberedRow {
  readonly line: number
  readonly cells: readonly string[]
}

/** Rows that hold something, with the line of the text on which each begins: a cell may hold line ends of its own. */
function numberRows(rows: readonly (readonly string[])[]): NumberedRow[] {
  let line = 1
  return rows.flatMap(cells => {
    const begins = line
    line += 1 + cells.reduce((ends, cell) => ends + (cell.match(/\r\n|\n|\r/g)?.length ?? 0), 0)
    return cells.some(cell => cell.trim() !== '') ? [{ line: begins, cells }] : []
  })
}

type Header =
  | { readonly kind: 'named'; readonly columns: readonly (Column | undefined)[] }
  | { readonly kind: 'none' }
  | {
      readonly kind: 'wrong'
      readonly faults: { unknown: string[]; missing: string[]; repeated: string[] }
    }

const withoutHeader: readonly Column[] = ['part_number', 'quantity']

/** `Part number` is `part_number`. Two columns of which the second counts need no names. */
function readHeader(cells: readonly string[]): Header {
  const names = trimEmptyEnd(cells).map(cell =>
    cell
      .trim()
      .toLowerCase()
      .replaceAll(/[\s-]+/g, '_'),
  )
  const isNamed = names.some(isColumn)
  if (!isNamed && names.length <= 2 && /^\d*$/.test(names[1] ?? '') && /\d/.test(names[0] ?? ''))
    return { kind: 'none' }
  const unknown = cells.slice(0, names.length).filter((_, at) => !isColumn(names[at] ?? ''))
  const missing = names.includes('part_number') ? [] : ['part_number']
  const repeated = names.filter((name, at) => names.indexOf(name) !== at)
  if (unknown.length + missing.length + repeated.length > 0)
    return { kind: 'wrong', faults: { unknown, missing, repeated } }
  return { kind: 'named', columns: names.filter(isColumn) }
}

function trimEmptyEnd(cells: readonly string[]): readonly string[] {
  const last = cells.findLastIndex(cell => cell.trim() !== '')
  return cells.slice(0, last + 1)
}

function isColumn(name: string): name is Column {
  return (orderColumns as readonly string[]).includes(name)
}

function asLine(line: number, cells: readonly string[], columns: readonly (Column | undefined)[]): OrderLine {
  const cell = (column: Column): string => (cells[columns.indexOf(column)] ?? '').trim()
  const given = {
    quantity: cell('quantity'),
    brand: cell('brand'),
    modelNumber: cell('model_number'),
    made: cell('made'),
    serial: cell('serial'),
  }
  const written = Object.entries(given).filter(([, value]) => value !== '')
  return { line, partNumber: cell('part_number'), ...Object.fromEntries(written) }
}
