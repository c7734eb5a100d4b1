import { z } from 'zod'
import {
  encodings,
  type Layout,
  type SavedLayout,
  type Shape,
  separators,
} from '../../../shared-schemas/supplier-layouts.ts'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'

const layoutRow = z.object({
  layout_id: z.int(),
  name: z.string(),
  feeds: z.string(),
  encoding: z.enum(encodings).nullable(),
  separator: z.enum(separators).nullable(),
  sheet: z.string().nullable(),
  header_row: z.int().nullable(),
  shape: z.enum(['long', 'wide-cell', 'wide-columns']),
  wide_column: z.string().nullable(),
  saved_at: z.string(),
  initials: z.string(),
})
type LayoutRow = z.output<typeof layoutRow>

const columnsOfLayout =
  'layout_id, name, feeds, encoding, separator, sheet, header_row, shape, wide_column, saved_at, initials'

/** Every layout, by name. */
export function listLayouts(database: ReadableDatabase): SavedLayout[] {
  return database
    .rows(layoutRow, `SELECT ${columnsOfLayout} FROM layout ORDER BY name_key`)
    .map(row => asLayout(database, row))
}

/** The layout of this name, in whatever letter case. */
export function readLayout(database: ReadableDatabase, name: string): SavedLayout | undefined {
  const row = database.row(
    layoutRow,
    `SELECT ${columnsOfLayout} FROM layout WHERE name_key = ?`,
    nameKeyOf(name),
  )
  return row && asLayout(database, row)
}

export function insertLayout(
  database: WritableDatabase,
  layout: Layout,
  { at, initials }: { readonly at: Date; readonly initials: string },
): void {
  const { name, feeds, reading, shape } = layout
  const { lastId: id } = database.run(
    `INSERT INTO layout (name, name_key, feeds, encoding, separator, sheet, header_row, shape, wide_column, saved_at,
       initials) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    name,
    nameKeyOf(name),
    feeds,
    reading.encoding,
    reading.separator,
    reading.sheet,
    reading.headerRow,
    shape.kind,
    shape.kind === 'long' ? null : shape.column,
    at.toISOString(),
    initials,
  )
  insertHeadings(database, id, layout)
  insertColumns(database, id, layout)
  if (shape.kind !== 'wide-cell') return
  for (const [place, separator] of shape.separators.entries())
    database.run(
      'INSERT INTO layout_model_separator (layout_id, place, separator) VALUES (?, ?, ?)',
      id,
      place,
      separator,
    )
}

export function deleteLayout(database: WritableDatabase, name: string): void {
  database.run('DELETE FROM layout WHERE name_key = ?', nameKeyOf(name))
}

export function updateLayoutName(
  database: WritableDatabase,
  { name, newName }: { readonly name: string; readonly newName: string },
): void {
  database.run(
    'UPDATE layout SET name = ?, name_key = ? WHERE name_key = ?',
    newName,
    nameKeyOf(newName),
    nameKeyOf(name),
  )
}

export function nameKeyOf(name: string): string {
  return name.trim().toLowerCase()
}

function insertHeadings(database: WritableDatabase, id: number, { headings, shape }: Layout): void {
  const wide = listWideHeadings(shape)
  for (const [place, heading] of headings.entries())
    database.run(
      'INSERT INTO layout_heading (layout_id, place, heading, is_wide) VALUES (?, ?, ?, ?)',
      id,
      place,
      heading,
      wide.includes(heading) ? 1 : 0,
    )
}

/** The headings whose cells hold the many models of a row. */
export function listWideHeadings(shape: Shape): readonly string[] {
  switch (shape.kind) {
    case 'long':
      return []
    case 'wide-cell':
      return [shape.heading]
    case 'wide-columns':
      return shape.headings
  }
}

function insertColumns(database: WritableDatabase, id: number, { columns }: Layout): void {
  for (const [place, match] of columns.entries()) {
    database.run(
      `INSERT INTO layout_column (layout_id, place, column_name, heading, constant, decimal_sign, thousands, date_order)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
      id,
      place,
      match.column,
      match.heading,
      match.constant,
      match.decimalSign,
      match.thousands ? 1 : 0,
      match.dateOrder,
    )
    for (const [nth, { theirs, ours }] of match.words.entries())
      database.run(
        'INSERT INTO layout_word (layout_id, column_place, place, theirs, ours) VALUES (?, ?, ?, ?, ?)',
        id,
        place,
        nth,
        theirs,
        ours,
      )
  }
}

const headingRow = z.object({ heading: z.string(), is_wide: z.int() })

function asLayout(database: ReadableDatabase, row: LayoutRow): SavedLayout {
  const headings = database.rows(
    headingRow,
    'SELECT heading, is_wide FROM layout_heading WHERE layout_id = ? ORDER BY place',
    row.layout_id,
  )
  const wide = headings.filter(({ is_wide }) => is_wide === 1).map(({ heading }) => heading)
  const { encoding, separator, sheet, header_row: headerRow } = row
  return {
    name: row.name,
    feeds: row.feeds,
    reading: { encoding, separator, sheet, headerRow },
    headings: headings.map(({ heading }) => heading),
    columns: readColumns(database, row.layout_id),
    shape: readShape(database, row, wide),
    savedAt: row.saved_at,
    initials: row.initials,
  }
}

const separatorRow = z.object({ separator: z.string() })

function readShape(
  database: ReadableDatabase,
  { layout_id, shape, wide_column: column }: LayoutRow,
  wide: readonly string[],
): Shape {
  if (column === null) return { kind: 'long' }
  if (shape === 'wide-columns') return { kind: shape, column, headings: [...wide] }
  const separators = database.rows(
    separatorRow,
    'SELECT separator FROM layout_model_separator WHERE layout_id = ? ORDER BY place',
    layout_id,
  )
  return {
    kind: 'wide-cell',
    column,
    heading: wide[0] ?? '',
    separators: separators.map(({ separator }) => separator),
  }
}

const columnRow = z.object({
  place: z.int(),
  column_name: z.string(),
  heading: z.string().nullable(),
  constant: z.string().nullable(),
  decimal_sign: z.enum(['.', ',']).nullable(),
  thousands: z.int(),
  date_order: z.enum(['ymd', 'dmy', 'mdy']).nullable(),
})
const wordRow = z.object({ column_place: z.int(), theirs: z.string(), ours: z.string() })

function readColumns(database: ReadableDatabase, id: number): Layout['columns'] {
  const words = database.rows(
    wordRow,
    'SELECT column_place, theirs, ours FROM layout_word WHERE layout_id = ? ORDER BY column_place, place',
    id,
  )
  const columns = database.rows(
    columnRow,
    `SELECT place, column_name, heading, constant, decimal_sign, thousands, date_order FROM layout_column
     WHERE layout_id = ? ORDER BY place`,
    id,
  )
  return columns.map(row => ({
    column: row.column_name,
    heading: row.heading,
    constant: row.constant,
    decimalSign: row.decimal_sign,
    thousands: row.thousands === 1,
    dateOrder: row.date_order,
    words: words
      .filter(({ column_place }) => column_place === row.place)
      .map(({ theirs, ours }) => ({ theirs, ours })),
  }))
}
