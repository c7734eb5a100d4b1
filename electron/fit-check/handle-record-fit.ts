import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { type DatabaseHandle, inTransaction } from '../database/handles.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { type Decided, orRefuse, Refusal } from '../requests/refusal.ts'
import type { FitRecord } from './fit-record.ts'
import { appendFitRecord, appendSettled, findFitRecord } from './fit-record-queries.ts'
import { findPartOrRefuse, settleModel } from './settle-subject.ts'

/** What is stamped on whatever is recorded. */
export interface Stamp {
  readonly now: () => Date
  readonly newId: () => string
}

/** Records what became of a part in one model. */
export function handleRecordFit(
  database: DatabaseHandle,
  { now, newId }: Stamp,
  open: OpenModels,
  told: CheckedInput<'fit-check.record-fit'>,
): Output<'fit-check.record-fit'> {
  return inTransaction(database, writable => {
    const { modelId } = orRefuse(settleModel(open))
    const { partId } = findPartOrRefuse(writable, told.part)
    const recordId = newId()
    const { kind, initials } = told
    const job = told.job ?? null
    const reason = told.kind === 'wrong-fit' ? told.reason : null
    const at = now().toISOString()
    appendFitRecord(writable, { recordId, kind, modelId, partId, job, reason, initials, at })
    return { recordId }
  })
}

/** Settles a wrong-fit return that waits for it. */
export function handleSettleWrongFit(
  database: DatabaseHandle,
  { now }: Stamp,
  { recordId, how, initials }: CheckedInput<'fit-check.settle-wrong-fit'>,
): Output<'fit-check.settle-wrong-fit'> {
  return inTransaction(database, writable => {
    const record = findFitRecord(writable, recordId)
    if (record === undefined) throw new Refusal({ code: 'record-not-found', recordId })
    orRefuse(isOpen(record))
    appendSettled(writable, recordId, { how, initials, at: now().toISOString() })
    return { recordId }
  })
}

function isOpen({ recordId, kind, settled }: FitRecord): Decided<true> {
  if (kind === 'wrong-fit' && settled === null) return { ok: true, value: true }
  const why = kind === 'confirmed' ? 'confirmed' : 'settled'
  return { ok: false, problem: { code: 'record-not-open', recordId, why } }
}
