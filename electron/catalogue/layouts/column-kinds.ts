import { measures } from '../expected-reading.ts'

/** What a column of ours holds, as far as it matters to who matches a supplier's file. */
export type ColumnKind =
  | { readonly holds: 'text' | 'number' | 'date' }
  | { readonly holds: 'words'; readonly takes: readonly string[] }

/** By file and column where files differ, else by column; a column that is not here holds text. */
const kinds: Readonly<Record<string, ColumnKind>> = {
  'parts.csv/kind': { holds: 'words', takes: ['genuine', 'pattern'] },
  'locations.csv/kind': { holds: 'words', takes: ['shop', 'van', 'quarantine'] },
  'fault_checks.csv/tolerance': { holds: 'text' },
  says: { holds: 'words', takes: ['includes', 'excludes'] },
  way: { holds: 'words', takes: ['one', 'both'] },
  rule: { holds: 'words', takes: ['equal', 'within', 'at-least', 'at-most', 'covers'] },
  safety_device: { holds: 'words', takes: ['yes', 'no'] },
  finished_first_visit: { holds: 'words', takes: ['yes', 'no'] },
  ends_in: { holds: 'words', takes: ['part', 'no-part', 'normal', 'licensed'] },
  licensed_for: { holds: 'words', takes: ['gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring'] },
  competence: { holds: 'words', takes: ['anyone', 'repairer', 'live-testing'] },
  stage: { holds: 'words', takes: ['before', 'fitting', 'test'] },
  measure: { holds: 'words', takes: measures },
  made_from: { holds: 'date' },
  made_to: { holds: 'date' },
  date: { holds: 'date' },
  price: { holds: 'number' },
  minimum_order: { holds: 'number' },
  carriage: { holds: 'number' },
  carriage_paid_from: { holds: 'number' },
  tolerance: { holds: 'number' },
  quantity: { holds: 'number' },
  from_quantity: { holds: 'number' },
  pack: { holds: 'number' },
  minimum: { holds: 'number' },
  level: { holds: 'number' },
  weight: { holds: 'number' },
  minutes: { holds: 'number' },
  lead_days: { holds: 'number' },
}

export function kindOfColumn(file: string, column: string): ColumnKind {
  return kinds[`${file}/${column}`] ?? kinds[column] ?? { holds: 'text' }
}
