import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { inTransaction } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import type { FaultShop } from './fault-shop.ts'
import { appendFinding, isJob } from './finding-queries.ts'
import { handleWeighFaults } from './handle-weigh-faults.ts'

/** Keeps what the guide proposes now for these answers. It is weighed anew here, so that nothing else can be kept. */
export function handleKeepFinding(
  shop: FaultShop,
  { job, initials, ...question }: CheckedInput<'fault-guide.keep-finding'>,
): Output<'fault-guide.keep-finding'> {
  const { database, now, newId, device } = shop
  return inTransaction(database, writable => {
    if (!isJob(writable, job)) throw new Refusal({ code: 'job-not-found', typed: job })
    const { applianceType, symptom, remedies, settledOn, answers } = handleWeighFaults(shop, question)
    const findingId = newId()
    appendFinding(writable, {
      ...{ findingId, job, applianceType, symptom, answers },
      remedy: settledOn === 0 ? null : (remedies[0] ?? null),
      ...{ recordedAt: now().toISOString(), device, initials: initials ?? '' },
    })
    return { findingId }
  })
}
