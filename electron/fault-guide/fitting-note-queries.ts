import { z } from 'zod'
import { fittingNote } from '../../shared-schemas/fault-guide.ts'
import type { Output } from '../../shared-schemas/index.ts'
import { readLicensedFamilies } from '../catalogue/licensed-families-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const familyRow = z.object({
  family_id: z.int(),
  family: z.string(),
  name: z.string(),
  safety_device: z.int(),
})

const noteRow = fittingNote.extend({ family_id: z.int() })

/**
 * The notes of these families in the order of the work, each family once and as it was asked. Of a family that has become
 * licensed work since its notes were loaded, none.
 */
export function listFittingNotes(
  database: ReadableDatabase,
  families: readonly string[],
): Output<'fault-guide.list-fitting-notes'> {
  const asked = JSON.stringify(families)
  const licensed = readLicensedFamilies(database)
  const notes = Map.groupBy(
    database.rows(
      noteRow,
      `SELECT family_id, stage, note, source
       FROM family JOIN fitting_note_family USING (family_id) JOIN fitting_note USING (fitting_note_id)
       WHERE family IN (SELECT value FROM json_each(?))
       ORDER BY stage = 'test', stage = 'fitting', fitting_note_id`,
      asked,
    ),
    row => row.family_id,
  )
  return {
    families: database
      .rows(
        familyRow,
        `SELECT family_id, family, name, safety_device
         FROM json_each(?) AS asked JOIN family ON family = asked.value
         GROUP BY family_id ORDER BY min(asked.key)`,
        asked,
      )
      .map(({ family_id, family, name, safety_device }) => {
        const licensedFor = licensed.get(family_id) ?? null
        const ofFamily = licensedFor === null ? (notes.get(family_id) ?? []) : []
        return {
          family,
          name,
          safetyDevice: safety_device === 1,
          licensedFor,
          notes: ofFamily.map(({ stage, note, source }) => ({ stage, note, source })),
        }
      }),
  }
}
