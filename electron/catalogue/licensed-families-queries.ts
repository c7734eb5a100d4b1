import { type LicensedHazard, licensedHazard } from '../../shared-schemas/hazards.ts'
import type { ReadableDatabase } from '../database/handles.ts'

/** The families that only a person licensed or certified for it works on, each with why. */
export function readLicensedFamilies(database: ReadableDatabase): ReadonlyMap<number, LicensedHazard> {
  const named = licensedHazard.options.map(hazard => `'${hazard}'`).join(', ')
  return new Map(
    database.tuples<[number, LicensedHazard]>(
      `SELECT family_id, min(hazard) FROM family_hazard WHERE hazard IN (${named}) GROUP BY family_id`,
    ),
  )
}
