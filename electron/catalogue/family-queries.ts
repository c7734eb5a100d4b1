import { z } from 'zod'
import type { FamilyRead, ListedFamily } from '../../shared-schemas/catalogue-lists.ts'
import { familyCode, familyId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'

const familyColumns = 'family_id, family, name, function, appliance_types, safety_device'
const familyRow = z.object({
  family_id: familyId,
  family: familyCode,
  name: z.string(),
  function: z.string(),
  appliance_types: z.string(),
  safety_device: z.int(),
})

/** Every part family, by what it does and then by name, each with how many parts it has. */
export function listFamilies(database: ReadableDatabase): ListedFamily[] {
  return database
    .rows(
      familyRow.extend({ parts: z.int() }),
      `SELECT ${familyColumns}, (SELECT count(*) FROM part WHERE part.family_id = family.family_id) AS parts
       FROM family ORDER BY function, name, family`,
    )
    .map(({ parts, ...row }) => ({ ...asFamily(row), parts }))
}

/** The family with this code, or a refusal. */
export function findFamilyOrRefuse(database: ReadableDatabase, typed: string): z.output<typeof familyRow> {
  const row = database.row(familyRow, `SELECT ${familyColumns} FROM family WHERE family = ?`, typed)
  if (row === undefined) throw new Refusal({ code: 'family-not-found', typed })
  return row
}

const partRow = z.object({
  part_number: z.string(),
  kind: z.enum(['genuine', 'pattern']),
  maker: z.string(),
  description: z.string(),
})

/** A family with its hazards and parts; genuine before pattern, then by number. */
export function readFamily(database: ReadableDatabase, typed: string): FamilyRead {
  const row = findFamilyOrRefuse(database, typed)
  const hazards = database.rows(
    z.object({ hazard: z.string() }),
    'SELECT hazard FROM family_hazard WHERE family_id = ? ORDER BY hazard',
    row.family_id,
  )
  const parts = database.rows(
    partRow,
    'SELECT part_number, kind, maker, description FROM part WHERE family_id = ? ORDER BY kind, part_number',
    row.family_id,
  )
  return {
    ...asFamily(row),
    hazards: hazards.map(({ hazard }) => hazard),
    parts: parts.map(({ part_number: partNumber, ...part }) => ({ partNumber, ...part })),
  }
}

function asFamily({
  family,
  name,
  function: does,
  appliance_types,
  safety_device,
}: z.output<typeof familyRow>) {
  return {
    family,
    name,
    function: does,
    applianceTypes: appliance_types === '' ? [] : appliance_types.split('|'),
    safetyDevice: safety_device === 1,
  }
}
