/**
 * The index by which model numbers are looked up, laid out once for a whole catalogue and kept with it, and which
 * models changed since. Triggers note them, so that it does not matter who writes. Where no index is kept, nothing is
 * noted. `stamp` is another for each index that was kept.
 */
export const modelIndex = `
CREATE TABLE model_index (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  stamp INTEGER NOT NULL,
  format INTEGER NOT NULL,
  catalogue_version INTEGER NOT NULL
) STRICT;

CREATE TABLE model_index_part (
  part TEXT NOT NULL PRIMARY KEY,
  bytes_each INTEGER NOT NULL CHECK (bytes_each IN (1, 2, 4)),
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE model_index_change (
  model_id INTEGER PRIMARY KEY
) STRICT;

${[
  noting('model', 'INSERT', 'NEW'),
  noting('model', 'UPDATE OF model_id, brand_id, model_number, model_key, appliance_type', 'OLD', 'NEW'),
  noting('model', 'DELETE', 'OLD'),
  noting('sales_name', 'INSERT', 'NEW'),
  noting('sales_name', 'UPDATE', 'OLD', 'NEW'),
  noting('sales_name', 'DELETE', 'OLD'),
].join('\n')}
`

/** Not `INSERT OR IGNORE`: inside a trigger, the policy of the statement that set it off would count. */
function noting(table: string, event: string, ...rows: readonly ('OLD' | 'NEW')[]): string {
  const [verb] = event.split(' ')
  const note = (row: string) => `INSERT INTO model_index_change SELECT ${row}.model_id
    WHERE NOT EXISTS (SELECT 1 FROM model_index_change WHERE model_id = ${row}.model_id);`
  return `CREATE TRIGGER model_index_notes_${table}_${verb?.toLowerCase()} AFTER ${event} ON ${table}
  WHEN EXISTS (SELECT 1 FROM model_index)
  BEGIN ${rows.map(note).join(' ')} END;`
}
