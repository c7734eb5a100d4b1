import type { ReadableDatabase } from '../../database/handles.ts'

/**
 * The tables that loads write and an undo restores. Sources and the terms of fitments stay for the history; fitments,
 * movements and what staff recorded have their own.
 */
export const recordedTables = [
  'brand',
  'model',
  'sales_name',
  'family',
  'family_hazard',
  'family_attribute',
  'part',
  'part_attribute',
  'cross_reference',
  'model_attribute',
  'fitment_pattern',
  'supersession',
  'supersession_need',
  'kit_content',
  'replaced_together',
  'date_code',
  'supplier',
  'offer',
  'location',
  'opening_stock',
  'usage',
  'van_list',
  'job',
  'job_family',
  'fault',
  'fault_family',
  'fault_check',
  'fault_check_hazard',
  'fault_check_outcome',
  'fault_outcome',
  'fitting_note',
  'fitting_note_family',
] as const

export type RecordedTable = (typeof recordedTables)[number]

export interface TableColumns {
  readonly all: readonly string[]
  /** The primary key, in its own order. */
  readonly key: readonly string[]
}

/** The columns of a table as the database has it. */
export function readColumns(database: ReadableDatabase, table: RecordedTable): TableColumns {
  const columns = [
    ...database.tuples<[string, number]>(`SELECT name, pk FROM pragma_table_info('${table}') ORDER BY cid`),
  ]
  return {
    all: columns.map(([name]) => name),
    key: columns
      .filter(([, place]) => place > 0)
      .sort(([, one], [, other]) => one - other)
      .map(([name]) => name),
  }
}
