import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { MovementStamp } from './append-movements.ts'

const attachedRow = z.object({ part_id: partId, pieces: z.int() })

/** Which part a code was attached to last, and for how many pieces of it. */
export function findAttached(
  database: ReadableDatabase,
  code: string,
): { readonly partId: PartId; readonly pieces: number } | undefined {
  const row = database.row(
    attachedRow,
    'SELECT part_id, pieces FROM part_code WHERE code = ? ORDER BY part_code_id DESC LIMIT 1',
    code,
  )
  return row && { partId: row.part_id, pieces: row.pieces }
}

export function appendPartCode(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  attached: {
    readonly code: string
    readonly partId: PartId
    readonly pieces: number
    readonly initials: string
  },
): void {
  database.run(
    `INSERT INTO part_code (part_code_id, code, part_id, pieces, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
    ...[
      newId(),
      attached.code,
      attached.partId,
      attached.pieces,
      now().toISOString(),
      device,
      attached.initials,
    ],
  )
}
