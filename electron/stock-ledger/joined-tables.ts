import { z } from 'zod'
import type { Bindable, ReadableDatabase } from '../database/handles.ts'

/** A table whose rows are never changed and have ids of their own, so that those of several machines are joined by union. */
export interface JoinedTable {
  readonly table: string
  /**
   * Two machines may each have written the row of one key, and mean the same by it: that a reading was taken back, say.
   * The row that arrived first stands. In any other table one key with two rows is refused.
   */
  readonly mayBeTwice?: true
}

/** What a column holds as people name it; the ids of parts and places differ from file to file. */
type Holds = 'text' | 'whole' | 'part' | 'location' | 'family' | 'model'

export interface JoinedColumn {
  readonly name: string
  readonly holds: Holds
  readonly mayBeNull: boolean
}

export interface JoinedColumns {
  readonly table: string
  readonly key: string
  readonly columns: readonly JoinedColumn[]
}

/** A row by names that mean the same on every machine. A model is its brand and its number. */
export const joinedValues = z.record(
  z.string(),
  z.union([z.string(), z.int(), z.tuple([z.string(), z.string()]), z.null()]),
)
export type JoinedValues = z.infer<typeof joinedValues>

/** The columns of a table as the database has them: none is forgotten when one is added. */
export function readJoinedColumns(database: ReadableDatabase, table: string): JoinedColumns {
  const references = new Map(
    database.tuples<[string, string]>(`SELECT "from", "table" FROM pragma_foreign_key_list('${table}')`),
  )
  const rows = [
    ...database.tuples<[string, string, number, number]>(
      `SELECT name, type, "notnull", pk FROM pragma_table_info('${table}') ORDER BY cid`,
    ),
  ]
  const key = rows.find(([, , , place]) => place === 1)?.[0]
  if (key === undefined) throw new Error(`a joined table has a key, and ${table} has none`)
  const columns = rows.map(([name, type, isNeeded, place]) => ({
    name,
    holds: holdsOf(type, references.get(name)),
    mayBeNull: isNeeded === 0 && place === 0,
  }))
  return { table, key, columns }
}

/** Rows of the shop's own records are named by their ids everywhere; only what a catalogue brings is numbered anew. */
function holdsOf(type: string, reference: string | undefined): Holds {
  if (reference === 'part' || reference === 'location' || reference === 'family' || reference === 'model')
    return reference
  return type === 'INTEGER' ? 'whole' : 'text'
}

const named: Readonly<Record<Holds, (column: string) => string>> = {
  text: column => column,
  whole: column => column,
  part: column => `(SELECT part_number FROM part WHERE part.part_id = joined.${column})`,
  location: column => `(SELECT location FROM location WHERE location.location_id = joined.${column})`,
  family: column => `(SELECT family FROM family WHERE family.family_id = joined.${column})`,
  model: column => `(SELECT json_array(brand.name, model_number) FROM model JOIN brand USING (brand_id)
    WHERE model.model_id = joined.${column})`,
}

/** Every row of a table, in the order of their keys. */
export function* listJoinedRows(
  database: ReadableDatabase,
  { table, key, columns }: JoinedColumns,
): Generator<JoinedValues> {
  const names = columns.map(({ name, holds }) => `${named[holds](name)} AS ${name}`)
  const rows = database.tuples<(string | number | null)[]>(
    `SELECT ${names.join(', ')} FROM ${table} AS joined ORDER BY ${key}`,
  )
  for (const row of rows)
    yield Object.fromEntries(
      columns.map(({ name, holds }, at) => {
        const value = row[at] ?? null
        return [
          name,
          holds === 'model' && typeof value === 'string' ? modelPair.parse(JSON.parse(value)) : value,
        ]
      }),
    )
}

const modelPair = z.tuple([z.string(), z.string()])

/** Finds what a name stands for here, or refuses it. */
export interface JoinedNames {
  part(name: string): number
  location(name: string): number
  family(name: string): number
  model(brand: string, modelNumber: string): number
}

/** The row as it is stored here, in the order of the columns. Undefined where it is none of this table. */
export function asStoredRow(
  { columns }: JoinedColumns,
  values: JoinedValues,
  names: JoinedNames,
): Bindable[] | undefined {
  if (Object.keys(values).some(name => !columns.some(column => column.name === name))) return undefined
  const stored: Bindable[] = []
  for (const column of columns) {
    const value = asStored(column, values[column.name] ?? null, names)
    if (value === undefined) return undefined
    stored.push(value)
  }
  return stored
}

function asStored(
  { holds, mayBeNull }: JoinedColumn,
  value: JoinedValues[string],
  names: JoinedNames,
): Bindable | undefined {
  if (value === null) return mayBeNull ? null : undefined
  if (Array.isArray(value)) return holds === 'model' ? names.model(...value) : undefined
  if (holds === 'whole') return typeof value === 'number' ? value : undefined
  if (typeof value !== 'string' || holds === 'model') return undefined
  return holds === 'text' ? value : names[holds](value)
}

/** Codes that were attached and parts that came back, on any machine of the shop. */
export const ownJoinedTables: readonly JoinedTable[] = [
  { table: 'part_code' },
  { table: 'part_return' },
  { table: 'return_decision' },
]
