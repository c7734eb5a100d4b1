import { z } from 'zod'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'

const familyRow = z.object({ family_id: z.int() })

/** The family with this code, however it is written. */
export function familyNamed(database: ReadableDatabase, typed: string): number {
  const row = database.row(
    familyRow,
    'SELECT family_id FROM family WHERE family = ?1 COLLATE NOCASE ORDER BY family = ?1 DESC LIMIT 1',
    typed,
  )
  if (row === undefined) throw new Refusal({ code: 'family-not-found', typed })
  return row.family_id
}
