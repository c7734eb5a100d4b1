import { z } from 'zod'
import type { Output } from '../../shared-schemas/index.ts'
import { explanationKind } from '../../shared-schemas/van-counts.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { type FoundCount, listFoundCounts, listLastReadings } from './count-queries.ts'

const postingRow = z.object({
  lines: z.int(),
  lines_within: z.int(),
  value_gained: z.string(),
  value_lost: z.string(),
})
const reasonRow = z.object({ kind: explanationKind, lines: z.int() })

/** Counts with how right the book was, what the variances were worth, and what they were put down to. */
export function listCounts(
  database: ReadableDatabase,
  locationId: number | null,
): Output<'van-counts.list-counts'> {
  return { counts: listFoundCounts(database, locationId).map(count => report(database, count)) }
}

function report(database: ReadableDatabase, count: FoundCount) {
  const { countId, location, begunAt, postedAt, initials } = count
  const posting = database.row(
    postingRow,
    'SELECT lines, lines_within, value_gained, value_lost FROM count_posting WHERE count_id = ?',
    countId,
  )
  return {
    ...{ countId, location, begunAt, postedAt, initials },
    lines: posting?.lines ?? listLastReadings(database, countId).length,
    recordAccuracy: posting === undefined ? null : posting.lines_within / posting.lines,
    valueGained: posting?.value_gained ?? null,
    valueLost: posting?.value_lost ?? null,
    reasons: database.rows(
      reasonRow,
      `SELECT kind, count(*) AS lines FROM (
         SELECT kind, max(explanation_id) FROM count_explanation WHERE count_id = ? GROUP BY part_id)
       GROUP BY kind ORDER BY lines DESC, kind`,
      countId,
    ),
  }
}
