import type { CheckedInput, Output } from '../../../shared-schemas/index.ts'
import type { RowChange } from '../../../shared-schemas/row-change.ts'
import type { Bindable, ReadableDatabase } from '../../database/handles.ts'
import { Refusal } from '../../requests/refusal.ts'
import { type ChangeSpan, readChangeSpan } from './load-log-queries.ts'
import { type RecordedTable, readColumns, type TableColumns } from './recorded-tables.ts'

/** What one load did row by row, as far as `most` rows, and how many there are. */
export function readLoad(
  database: ReadableDatabase,
  { loadRunId, most }: CheckedInput<'catalogue.read-load'>,
): Output<'catalogue.read-load'> {
  const changes = readChangeSpan(database, loadRunId)
  if (changes === undefined) throw new Refusal({ code: 'load-not-found', loadRunId })
  return { changes: listRowChanges(database, changes, most), rows: changes.last - changes.first + 1 }
}

/** The first so many of these row changes, in words: what each row said before, and what it said after. */
export function listRowChanges(
  database: ReadableDatabase,
  { first, last }: ChangeSpan,
  most: number,
): RowChange[] {
  const rows = [
    ...database.tuples<[RecordedTable, RowChange['change'], string, string | null, string | null]>(
      // What became of a row later is found in one pass, since there is no index for it: the load writes faster so.
      `WITH shown AS MATERIALIZED (
         SELECT * FROM load_change WHERE change_id BETWEEN ? AND ? ORDER BY change_id LIMIT ?),
       next AS MATERIALIZED (
         SELECT shown.change_id AS of_change, min(later.change_id) AS change_id
         FROM load_change AS later CROSS JOIN shown
           ON shown.row_key = later.row_key AND shown.table_name = later.table_name
         WHERE later.change_id > (SELECT min(change_id) FROM shown) AND later.change_id > shown.change_id
         GROUP BY shown.change_id)
       SELECT shown.table_name, shown.change, shown.row_key, shown.before,
         iif(following.change_id IS NULL, NULL, json_array(following.change, following.before))
       FROM shown LEFT JOIN next ON next.of_change = shown.change_id
         LEFT JOIN load_change AS following ON following.change_id = next.change_id
       ORDER BY shown.change_id`,
      first,
      last,
      most,
    ),
  ]
  const words = new RowWords(database)
  return rows.map(([table, change, key, before, next]) => {
    const columns = words.columns(table)
    const wasThen = before === null ? undefined : (JSON.parse(before) as Bindable[])
    const isThen = change === 'removed' ? undefined : readAfter(database, table, columns, key, next)
    return words.describe(table, change, wasThen, isThen)
  })
}

/** What a row said after a change: as the next change found it, or else as it stands. */
function readAfter(
  database: ReadableDatabase,
  table: RecordedTable,
  { all, key: keyColumns }: TableColumns,
  key: string,
  next: string | null,
): readonly Bindable[] | undefined {
  if (next !== null) return JSON.parse(JSON.parse(next)[1])
  const [row] = database.tuples<Bindable[]>(
    `SELECT ${all.join(', ')} FROM ${table} WHERE ${keyColumns.map(name => `${name} = ?`).join(' AND ')}`,
    ...(JSON.parse(key) as Bindable[]),
  )
  return row
}

/** What people call a row, where that is not its primary key. */
const namedBy: Partial<Record<RecordedTable, readonly string[]>> = {
  brand: ['name'],
  model: ['brand_id', 'model_number'],
  family: ['family'],
  part: ['part_number'],
  supplier: ['supplier'],
  location: ['location'],
  supersession: ['old_part_id', 'new_part_id'],
  supersession_need: ['part_id'],
  van_list: ['location_id', 'family_id', 'part_id'],
  fault: ['appliance_type', 'symptom', 'cause'],
  fault_check: ['appliance_type', 'check_name'],
  fitting_note: ['stage', 'note'],
}

/** By the end of a column's name, where the name of what it refers to stands. */
const referred = [
  ['brand_id', 'brand', 'name'],
  ['model_id', 'model', 'model_number'],
  ['family_id', 'family', 'family'],
  ['part_id', 'part', 'part_number'],
  ['supplier_id', 'supplier', 'supplier'],
  ['location_id', 'location', 'location'],
  ['fault_id', 'fault', 'cause'],
  ['fault_check_id', 'fault_check', 'check_name'],
  ['fitting_note_id', 'fitting_note', 'note'],
] as const

class RowWords {
  readonly #database: ReadableDatabase
  readonly #columns = new Map<RecordedTable, TableColumns>()

  constructor(database: ReadableDatabase) {
    this.#database = database
  }

  columns(table: RecordedTable): TableColumns {
    const known = this.#columns.get(table) ?? readColumns(this.#database, table)
    this.#columns.set(table, known)
    return known
  }

  describe(
    table: RecordedTable,
    change: RowChange['change'],
    before: readonly Bindable[] | undefined,
    after: readonly Bindable[] | undefined,
  ): RowChange {
    const { all, key } = this.columns(table)
    const row = after ?? before ?? []
    const names = namedBy[table] ?? key
    const said = names.map(name => this.#word(table, name, row[all.indexOf(name)]))
    const columns = all.flatMap((column, at) => {
      const [was, is] = [before, after].map(values => this.#word(table, column, values?.[at]))
      const tells = was !== is && !column.endsWith('_key') && !(key.length === 1 && column === key[0])
      return tells ? [{ column: column.replace(/_id$/, ''), before: was ?? '', after: is ?? '' }] : []
    })
    return { table, change, row: said.filter(word => word !== '').join(' · '), columns }
  }

  #word(table: RecordedTable, column: string, value: Bindable | undefined): string {
    if (value === null || value === undefined) return ''
    const reference = referred.find(([ending, of]) => of !== table && column.endsWith(ending))
    if (reference === undefined) return String(value)
    const [, of, name] = reference
    const [found] = this.#database.tuples<[string]>(`SELECT ${name} FROM ${of} WHERE ${of}_id = ?`, value)
    return found?.[0] ?? String(value)
  }
}
