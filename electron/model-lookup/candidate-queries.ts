import { z } from 'zod'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'

/** What a candidate shows of its model beyond the index. */
export interface CandidateFacts {
  readonly salesNames: string[]
  readonly madeFrom: string | null
  readonly madeTo: string | null
}

const madeRow = z.object({ made_from: z.string().nullable(), made_to: z.string().nullable() })
const nameRow = z.object({ sales_name: z.string() })

/** A model's sales names and when it was made. */
export function readCandidateFacts(database: ReadableDatabase, modelId: ModelId): CandidateFacts {
  const made = database.row(madeRow, 'SELECT made_from, made_to FROM model WHERE model_id = ?', modelId)
  const names = database.rows(
    nameRow,
    'SELECT sales_name FROM sales_name WHERE model_id = ? ORDER BY sales_name',
    modelId,
  )
  return {
    salesNames: names.map(({ sales_name }) => sales_name),
    madeFrom: made?.made_from ?? null,
    madeTo: made?.made_to ?? null,
  }
}
