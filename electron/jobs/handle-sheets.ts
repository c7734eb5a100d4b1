import type { CheckedInput } from '../../shared-schemas/index.ts'
import type { Job } from '../../shared-schemas/jobs.ts'
import { inTransaction, type ReadableDatabase, type WritableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { locationNamed } from '../stock-ledger/named-things.ts'
import { decideState } from './decide-state.ts'
import { makeJobNumber } from './job-number.ts'
import type { JobSheet } from './job-sheet.ts'
import { appendSheet, type FoundJob, findJob, hasSheet, readSheet } from './job-sheet-queries.ts'
import { listVisits } from './job-visit-queries.ts'
import type { JobsShop } from './jobs-shop.ts'
import { tellJob } from './tell-job.ts'
import { writeJobRow } from './write-job-row.ts'

/** Opens a job under a number that no other has. */
export function openJob(shop: JobsShop, input: CheckedInput<'jobs.open-job'>): Job {
  return inTransaction(shop.database, database => {
    const job = input.job ?? makeJobNumber(shop.now(), shop.newId())
    const before = findJob(database, job)
    if (before !== undefined) throw new Refusal({ code: 'job-exists', job: before.job })
    database.run("INSERT INTO job (job, date, symptom) VALUES (?, '', '')", job)
    writeSheet(database, shop, { job, facts: input, opens: true })
    return tellJob(database, shop, jobNamed(database, job))
  })
}

/** Writes the facts of a job anew. */
export function changeJob(shop: JobsShop, input: CheckedInput<'jobs.change-job'>): Job {
  return inTransaction(shop.database, database => {
    const found = jobNamed(database, input.job)
    writeSheet(database, shop, { job: found.job, facts: input, opens: false })
    return tellJob(database, shop, found)
  })
}

/** The job with this number. */
export function jobNamed(database: ReadableDatabase, typed: string): FoundJob {
  const found = findJob(database, typed)
  if (found === undefined) throw new Refusal({ code: 'job-not-found', typed })
  return found
}

/**
 * The job with this number, for whoever writes more about it: it is open, and has a sheet of its own. One that only a
 * file has is given one, so that it goes to the other machines with what is written of it.
 */
export function openJobNamed(database: WritableDatabase, shop: JobsShop, typed: string): FoundJob {
  const found = jobNamed(database, typed)
  const { state } = decideState(listVisits(database, found.job), found.saidByFile)
  if (state !== 'open') throw new Refusal({ code: 'job-ended', job: found.job, state })
  keepSheet(database, shop, found.job)
  return found
}

export function keepSheet(database: WritableDatabase, shop: JobsShop, job: string): void {
  if (hasSheet(database, job)) return
  const sheet = readSheet(database, job)
  const locationId = sheet.van === null ? null : locationNamed(database, sheet.van).locationId
  appendSheet(database, shop, { ...sheet, locationId, opens: false, initials: '' })
}

function writeSheet(
  database: WritableDatabase,
  shop: JobsShop,
  {
    job,
    facts,
    opens,
  }: { readonly job: string; readonly facts: CheckedInput<'jobs.open-job'>; readonly opens: boolean },
): void {
  const place = facts.van === undefined ? null : locationNamed(database, facts.van)
  const { brand, made, serial, volts, hertz, watts, customer } = facts
  const sheet: JobSheet = {
    ...{ job, model: facts.model.trim(), symptom: facts.symptom, van: place?.location ?? null },
    date: facts.date ?? dayHere(shop.now()),
    ...{ brand: brand ?? null, made: made ?? null, serial: serial ?? null, customer: customer ?? null },
    ...{ volts: volts ?? null, hertz: hertz ?? null, watts: watts ?? null },
  }
  const locationId = place?.locationId ?? null
  appendSheet(database, shop, { ...sheet, locationId, opens, initials: facts.initials ?? '' })
  writeJobRow(database, shop, job)
}

/** The day by the clock of the shop, not by that of Greenwich. */
function dayHere(now: Date): string {
  const two = (figure: number) => String(figure).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
