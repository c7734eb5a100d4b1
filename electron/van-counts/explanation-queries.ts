import { z } from 'zod'
import { type ExplanationKind, explanationKind } from '../../shared-schemas/van-counts.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { MovementStamp } from '../stock-ledger/append-movements.ts'

export interface SettledExplanation {
  readonly partId: number
  readonly kind: ExplanationKind
  readonly detail: string
}

const explanationRow = z.object({ part_id: z.int(), kind: explanationKind, detail: z.string() })

/** What staff said last of each part of a count. */
export function listSettled(
  database: ReadableDatabase,
  countId: string,
): ReadonlyMap<number, SettledExplanation> {
  const rows = database.rows(
    explanationRow,
    `SELECT part_id, kind, detail, max(explanation_id) AS last FROM count_explanation
     WHERE count_id = ? GROUP BY part_id`,
    countId,
  )
  return new Map(rows.map(({ part_id, kind, detail }) => [part_id, { partId: part_id, kind, detail }]))
}

export function appendExplanation(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  countId: string,
  { partId, kind, detail, initials }: SettledExplanation & { readonly initials: string },
): void {
  database.run(
    `INSERT INTO count_explanation (explanation_id, count_id, part_id, kind, detail, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[newId(), countId, partId, kind, detail, now().toISOString(), device, initials],
  )
}
