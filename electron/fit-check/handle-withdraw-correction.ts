import { isCorrection } from '../../shared-schemas/fit-records.ts'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { withdrawExclusions } from '../catalogue/append-exclusion.ts'
import { type DatabaseHandle, inTransaction, type ReadableDatabase } from '../database/handles.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { orRefuse, Refusal } from '../requests/refusal.ts'
import { datePeriods } from './date-statements.ts'
import { readSaidOfModel } from './history-queries.ts'
import { findPartOrRefuse, settleModel } from './settle-subject.ts'

/** Takes back a correction of the shop, wherever in the model it forbids the part; a supplier's word is not taken back. */
export function handleWithdrawCorrection(
  database: DatabaseHandle,
  now: () => Date,
  open: OpenModels,
  { part, source, reason, initials }: CheckedInput<'fit-check.withdraw-correction'>,
): Output<'fit-check.withdraw-correction'> {
  return inTransaction(database, writable => {
    const { modelId } = orRefuse(settleModel(open))
    const { partId, partNumber } = findPartOrRefuse(writable, part)
    const isWithdrawn =
      isCorrection(source) &&
      withdrawExclusions(writable, {
        modelId,
        partId,
        source,
        corrections: listCorrections(writable, modelId),
        reason: `withdrawn by ${initials}: ${reason}`,
        at: now(),
      })
    if (!isWithdrawn) throw new Refusal({ code: 'correction-not-standing', part: partNumber, source })
    return { source }
  })
}

/** What is said of the model now and came by a correction: a list whose source only reads alike did not. */
function listCorrections(database: ReadableDatabase, modelId: ModelId): ReadonlySet<number> {
  const standing = datePeriods(readSaidOfModel(database, modelId)).filter(
    ({ since, until }) => until === null && since !== null && since.correctionReason !== null,
  )
  return new Set(standing.map(({ termsId }) => termsId))
}
