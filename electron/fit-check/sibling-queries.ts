import { z } from 'zod'
import {
  type FamilyId,
  type PartId,
  type PartNumber,
  partId,
  partNumber,
} from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'

const siblingRow = z.object({ part_id: partId, part_number: partNumber })

export interface SiblingPart {
  readonly partId: PartId
  readonly partNumber: PartNumber
}

/** The parts of a family, genuine before pattern, then by number. */
export function listSiblingParts(database: ReadableDatabase, familyId: FamilyId): SiblingPart[] {
  return database
    .rows(
      siblingRow,
      'SELECT part_id, part_number FROM part WHERE family_id = ? ORDER BY kind, part_number',
      familyId,
    )
    .map(row => ({ partId: row.part_id, partNumber: row.part_number }))
}
