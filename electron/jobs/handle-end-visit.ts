import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { Job } from '../../shared-schemas/jobs.ts'
import { inTransaction, type WritableDatabase } from '../database/handles.ts'
import { orRefuse, Refusal } from '../requests/refusal.ts'
import { partNumbered } from '../stock-ledger/named-things.ts'
import { endReservation, listReservations } from '../stock-ledger/reservation-queries.ts'
import { decideState } from './decide-state.ts'
import { listInHand, moveBack } from './handle-parts.ts'
import { jobNamed, keepSheet, openJobNamed } from './handle-sheets.ts'
import { plateOf } from './job-sheet.ts'
import { readSheet } from './job-sheet-queries.ts'
import { appendVisit, listVisits } from './job-visit-queries.ts'
import type { JobsShop } from './jobs-shop.ts'
import { planEnding } from './plan-ending.ts'
import { tellJob } from './tell-job.ts'
import { writeJobRow } from './write-job-row.ts'

/**
 * Ends a visit, all of it in one transaction: what goes back is booked, what was kept is freed if the job is over, and
 * what was fitted is recorded as confirmed if the appliance works and its model is settled.
 */
export function endVisit(shop: JobsShop, input: CheckedInput<'jobs.end-visit'>): Output<'jobs.end-visit'> {
  return inTransaction(shop.database, database => {
    const found = openJobNamed(database, shop, input.job)
    const { job } = found
    const { outcome, initials } = input
    const isOver = outcome !== 'not-finished'
    if (outcome !== 'finished' && input.why === undefined) throw new Refusal({ code: 'why-needed', job })
    const back = input.back.map(({ part, quantity, to }) => ({
      ...{ partNumber: partNumbered(database, part).partNumber, quantity, to },
    }))
    orRefuse(planEnding(job, listInHand(database, job), { back, isOver }))
    for (const line of back) moveBack(database, shop, { job, ...line, initials })
    const released = isOver ? releaseAll(database, shop, { job, initials }) : 0
    const fitted = outcome === 'finished' ? listFitted(database, job) : []
    const isSettled = shop.lookUpPlate(plateOf(readSheet(database, job)))?.settled != null
    if (isSettled) for (const part of fitted) confirm(database, shop, { job, part, initials })
    appendVisit(database, shop, {
      ...{ job, outcome, initials, why: input.why ?? null, note: input.note ?? null },
      ...{ causeKey: input.causeKey ?? null, cause: input.cause ?? null },
    })
    writeJobRow(database, shop, job)
    return {
      job: tellJob(database, shop, found),
      released,
      confirmed: isSettled ? fitted : [],
      notConfirmed: isSettled ? [] : fitted,
    }
  })
}

/** Opens a job again that was ended by mistake. What was booked stays booked. */
export function reopenJob(shop: JobsShop, input: CheckedInput<'jobs.reopen-job'>): Job {
  return inTransaction(shop.database, database => {
    const found = jobNamed(database, input.job)
    const { job } = found
    if (decideState(listVisits(database, job), found.saidByFile).state === 'open')
      throw new Refusal({ code: 'job-open', job })
    keepSheet(database, shop, job)
    const nothing = { why: null, note: null, causeKey: null, cause: null }
    appendVisit(database, shop, { job, outcome: 'reopened', initials: input.initials ?? '', ...nothing })
    writeJobRow(database, shop, job)
    return tellJob(database, shop, found)
  })
}

function releaseAll(
  database: WritableDatabase,
  shop: JobsShop,
  { job, initials }: { readonly job: string; readonly initials: string },
): number {
  const left = listReservations(database, { reference: job }).filter(({ heldFor }) => heldFor === 'job')
  for (const { reservationId } of left)
    endReservation(database, shop, { reservationId, how: 'released', initials })
  return left.length
}

function listFitted(database: WritableDatabase, job: string): string[] {
  return listInHand(database, job)
    .filter(({ fitted }) => fitted > 0)
    .map(({ partNumber }) => partNumber)
}

function confirm(
  database: WritableDatabase,
  shop: JobsShop,
  { job, part, initials }: { readonly job: string; readonly part: string; readonly initials: string },
): void {
  const { model, brand } = plateOf(readSheet(database, job))
  shop.confirmFit({ model, part, job, initials, ...(brand === undefined ? {} : { brand }) })
}
