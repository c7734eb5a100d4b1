import { nameCorrection } from '../../shared-schemas/fit-records.ts'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { appendExclusion } from '../catalogue/append-exclusion.ts'
import { type DatabaseHandle, inTransaction } from '../database/handles.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { orRefuse } from '../requests/refusal.ts'
import { dayOf } from './fit-record.ts'
import { findPartOrRefuse, settleModel } from './settle-subject.ts'

/** Corrects the catalogue: the part must not be used in the model, from now on, by the word of whoever signs. */
export function handleAddExclusion(
  database: DatabaseHandle,
  now: () => Date,
  open: OpenModels,
  { part, position, reason, initials }: CheckedInput<'fit-check.add-exclusion'>,
): Output<'fit-check.add-exclusion'> {
  return inTransaction(database, writable => {
    const { modelId } = orRefuse(settleModel(open))
    const { partId } = findPartOrRefuse(writable, part)
    const at = now()
    const source = nameCorrection(initials, dayOf(at.toISOString()))
    const isNew = appendExclusion(writable, {
      modelId,
      partId,
      position: position ?? null,
      source,
      reason,
      at,
    })
    return { source, isNew }
  })
}
