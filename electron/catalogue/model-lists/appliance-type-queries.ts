import type { ReadableDatabase } from '../../database/handles.ts'

/** What each of these models is, as its list says; a model that is none of this catalogue is left out. */
export function readApplianceTypes(
  database: ReadableDatabase,
  modelIds: readonly number[],
): ReadonlyMap<number, string> {
  return new Map(
    database.tuples<[number, string]>(
      'SELECT model_id, appliance_type FROM json_each(?) JOIN model ON model_id = value',
      JSON.stringify(modelIds),
    ),
  )
}
