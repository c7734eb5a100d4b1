import { decodeIds } from '../../electron/catalogue/fitments/id-lists.ts'
import type { DatabaseHandle } from '../../electron/database/handles.ts'

/**
 * Puts the fitments and their changes into temporary tables `said` and `changed` of one row a pair, for tests that ask in
 * SQL. They hold what there is now, each time anew.
 */
export function unpackFitments({ connection }: DatabaseHandle): void {
  connection.exec(`
    CREATE TEMP TABLE IF NOT EXISTS said (model_id INTEGER, terms_id INTEGER);
    CREATE TEMP TABLE IF NOT EXISTS changed (model_id INTEGER, terms_id INTEGER, load_run_id INTEGER, change TEXT);
    DELETE FROM temp.said;
    DELETE FROM temp.changed`)
  const [addSaid, addChanged] = [
    connection.prepare('INSERT INTO said VALUES (?, ?)'),
    connection.prepare('INSERT INTO changed VALUES (?, ?, ?, ?)'),
  ]
  for (const row of connection.prepare('SELECT model_id, terms FROM fitment_by_model').all() as Packed[])
    for (const termsId of decodeIds(row.terms)) addSaid.run(row.model_id, termsId)
  const changes = connection.prepare('SELECT model_id, load_run_id, change, terms FROM fitment_change').all()
  for (const row of changes as PackedChange[])
    for (const termsId of decodeIds(row.terms))
      addChanged.run(row.model_id, termsId, row.load_run_id, row.change)
}

interface Packed {
  readonly model_id: number
  readonly terms: Uint8Array
}

interface PackedChange extends Packed {
  readonly load_run_id: number
  readonly change: string
}
