import { z } from 'zod'
import { type PartId, partId, partNumber } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { Companion } from './part-dossier.ts'

const companionRow = z.object({
  part_id: partId,
  with_part_id: partId,
  part_number: partNumber,
  quantity: z.int(),
  why: z.string().nullable(),
})

/** What is replaced together with each of these parts, by number; a part that goes in alone is left out. */
export function readReplacedTogether(
  database: ReadableDatabase,
  partIds: Iterable<PartId>,
): ReadonlyMap<PartId, readonly Companion[]> {
  const rows = database.rows(
    companionRow,
    `SELECT replaced_together.part_id, with_part_id, part_number, quantity, why
     FROM json_each(?) AS asked CROSS JOIN replaced_together ON replaced_together.part_id = asked.value
     JOIN part ON part.part_id = with_part_id ORDER BY part_number`,
    JSON.stringify([...partIds]),
  )
  const companions = rows.map(row => ({
    of: row.part_id,
    companion: {
      partId: row.with_part_id,
      partNumber: row.part_number,
      quantity: row.quantity,
      why: row.why,
    },
  }))
  return new Map(
    [...Map.groupBy(companions, ({ of }) => of)].map(([of, found]) => [
      of,
      found.map(({ companion }) => companion),
    ]),
  )
}
