import type { DatabaseHandle } from '../../electron/database/handles.ts'
import { inMemory, openDatabase } from '../../electron/database/open-database.ts'

interface ShopOfIds {
  readonly modelIds: readonly number[]
  readonly termsIds: readonly number[]
  /** How many runs there are to name. */
  readonly runs: number
}

/** A shop in memory with models and terms of these ids and nothing said yet. */
export function openShopOfIds({ modelIds, termsIds, runs }: ShopOfIds): DatabaseHandle {
  const database = openDatabase(inMemory)
  const { connection } = database
  connection.exec(`
    INSERT INTO brand VALUES (1, 'Ostrel', 'OSTREL');
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO source VALUES (1, 'list')`)
  const [model, terms, run] = [
    connection.prepare(`INSERT INTO model (model_id, brand_id, model_number, model_key, appliance_type)
      VALUES (?1, 1, 'OW ' || ?1, 'OW' || ?1, 'washer')`),
    connection.prepare(`INSERT INTO fitment_terms (terms_id, says, family_id, position, source_id)
      VALUES (?1, 'includes', 1, ?1, 1)`),
    connection.prepare(`INSERT INTO load_run (load_run_id, loaded_at, path, added, changed, unchanged, rejected,
      first_fitments) VALUES (?1, '2026-11-23', '/lists', 0, 0, 0, 0, 0)`),
  ]
  connection.transaction(() => {
    for (const id of modelIds) model.run({ 1: id })
    for (const id of termsIds) terms.run({ 1: id })
    for (let id = 1; id <= runs; id += 1) run.run({ 1: id })
  })()
  return database
}
