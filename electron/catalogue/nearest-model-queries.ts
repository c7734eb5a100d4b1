import { z } from 'zod'
import type { ReadableDatabase } from '../database/handles.ts'
import { normaliseNumber } from './normalise-number.ts'

const nearRow = z.object({ model_number: z.string() })

/** Numbers of one brand that begin as this one does, for a person to compare; never taken in its place. */
export function listNearestModelNumbers(
  database: ReadableDatabase,
  { brandId, listed, most }: { readonly brandId: number; readonly listed: string; readonly most: number },
): string[] {
  const key = normaliseNumber(listed)
  if (key.length < 3) return []
  const start = key.slice(0, Math.max(3, key.length - 2))
  const rows = database.rows(
    nearRow,
    `SELECT model_number FROM model WHERE brand_id = ? AND model_key >= ? AND model_key < ?
     ORDER BY model_key LIMIT ?`,
    brandId,
    start,
    `${start}\u{10ffff}`,
    most,
  )
  return rows.map(row => row.model_number)
}
