import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { Job } from '../../shared-schemas/jobs.ts'
import { inTransaction, type WritableDatabase } from '../database/handles.ts'
import { orRefuse, Refusal } from '../requests/refusal.ts'
import { partNumbered } from '../stock-ledger/named-things.ts'
import { recordWithin } from '../stock-ledger/record-movement.ts'
import { familyNamed } from './family-queries.ts'
import { openJobNamed } from './handle-sheets.ts'
import { appendFitting, appendNeed, listJobParts } from './job-part-queries.ts'
import { readSheet } from './job-sheet-queries.ts'
import type { JobsShop } from './jobs-shop.ts'
import { planEnding } from './plan-ending.ts'
import { type PartCounts, reckonInHand } from './reckon-parts.ts'
import { tellJob } from './tell-job.ts'
import { writeJobRow } from './write-job-row.ts'

/** Puts a part, or any part of a family, on the list of what the job needs, or takes it off. */
export function needPart(shop: JobsShop, input: CheckedInput<'jobs.need-part'>): Job {
  return inTransaction(shop.database, database => {
    const found = openJobNamed(database, shop, input.job)
    const { part, family, quantity, initials = '' } = input
    if ((part === undefined) === (family === undefined))
      throw new Refusal({ code: 'part-or-family', both: part !== undefined })
    const familyId = family === undefined ? null : familyNamed(database, family)
    const partId = part === undefined ? null : partNumbered(database, part).partId
    appendNeed(database, shop, { job: found.job, familyId, partId, quantity, initials })
    writeJobRow(database, shop, found.job)
    return tellJob(database, shop, found)
  })
}

/** Takes pieces for the job: an issue from the van or shelf to the job. */
export function takePart(shop: JobsShop, input: CheckedInput<'jobs.take-part'>): Output<'jobs.take-part'> {
  return inTransaction(shop.database, database => {
    const found = openJobNamed(database, shop, input.job)
    const { part, quantity, usedBeforeBooked, takeReserved, initials } = input
    const from = input.from ?? readSheet(database, found.job).van
    if (from === null) throw new Refusal({ code: 'job-without-van', job: found.job })
    const movement = recordWithin(database, shop, {
      ...{ part, quantity, from, to: 'job', reason: 'taken for the job', reference: found.job, initials },
      ...{ usedBeforeBooked, takeReserved },
    })
    return { movement, job: tellJob(database, shop, found) }
  })
}

/** Brings pieces back that were not fitted: a return from the job to the van or shelf. */
export function bringBack(shop: JobsShop, input: CheckedInput<'jobs.bring-back'>): Output<'jobs.bring-back'> {
  return inTransaction(shop.database, database => {
    const found = openJobNamed(database, shop, input.job)
    const { partNumber } = partNumbered(database, input.part)
    const parts = listInHand(database, found.job)
    const back = { partNumber, quantity: input.quantity }
    orRefuse(planEnding(found.job, parts, { back: [back], isOver: false }))
    const to = input.to ?? parts.find(part => part.partNumber === partNumber)?.takenFrom
    if (to == null) throw new Refusal({ code: 'job-without-van', job: found.job })
    const movement = moveBack(database, shop, { job: found.job, ...back, to, initials: input.initials })
    return { movement, job: tellJob(database, shop, found) }
  })
}

/** Books pieces from the job back to a place. */
export function moveBack(
  database: WritableDatabase,
  shop: JobsShop,
  back: {
    readonly job: string
    readonly partNumber: string
    readonly quantity: number
    readonly to: string
    readonly initials: string | undefined
  },
) {
  const { job, partNumber, quantity, to, initials } = back
  return recordWithin(database, shop, {
    ...{ part: partNumber, quantity, from: 'job', to, reason: 'not fitted, brought back', reference: job },
    ...{ initials, usedBeforeBooked: false, takeReserved: false },
  })
}

/** Marks pieces as fitted, or as not fitted after all. Where they are by the book does not change: they left with the job. */
export function markFitted(shop: JobsShop, input: CheckedInput<'jobs.mark-fitted'>): Job {
  return inTransaction(shop.database, database => {
    const found = openJobNamed(database, shop, input.job)
    const { job } = found
    const { partId, partNumber } = partNumbered(database, input.part)
    const counts = listInHand(database, job).find(part => part.partId === partId) ?? nothing
    const { quantity, initials = '' } = input
    if (quantity > counts.inHand)
      throw new Refusal({
        ...{ code: 'not-in-hand', job, part: partNumber, inHand: counts.inHand, wanted: quantity },
      })
    if (-quantity > counts.fitted)
      throw new Refusal({ code: 'not-fitted', job, part: partNumber, fitted: counts.fitted })
    appendFitting(database, shop, { job, partId, quantity, initials })
    writeJobRow(database, shop, job)
    return tellJob(database, shop, found)
  })
}

const nothing = { taken: 0, broughtBack: 0, fitted: 0, inHand: 0 } satisfies PartCounts & { inHand: number }

/** The parts of a job with what is in hand of each. */
export function listInHand(database: WritableDatabase, job: string) {
  return listJobParts(database, job).map(part => ({ ...part, inHand: reckonInHand(part) }))
}
