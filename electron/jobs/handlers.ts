import type { HandlersOf } from '../requests/handlers.ts'
import { locationNamed } from '../stock-ledger/named-things.ts'
import { listFinishedJobs } from './finished-jobs-queries.ts'
import { endVisit, reopenJob } from './handle-end-visit.ts'
import { bringBack, markFitted, needPart, takePart } from './handle-parts.ts'
import { changeJob, jobNamed, openJob } from './handle-sheets.ts'
import type { JobsShop } from './jobs-shop.ts'
import { listJobs } from './list-jobs-queries.ts'
import { tellJob } from './tell-job.ts'

export function jobsHandlers(shop: JobsShop): HandlersOf<'jobs'> {
  const { database } = shop
  return {
    'jobs.open-job': input => openJob(shop, input),
    'jobs.change-job': input => changeJob(shop, input),
    'jobs.read-job': ({ job }) => tellJob(database, shop, jobNamed(database, job)),
    'jobs.list-jobs': ({ van, ...asked }) =>
      listJobs(database, {
        ...asked,
        van: van === undefined ? null : locationNamed(database, van).location,
      }),
    'jobs.need-part': input => needPart(shop, input),
    'jobs.take-part': input => takePart(shop, input),
    'jobs.bring-back': input => bringBack(shop, input),
    'jobs.mark-fitted': input => markFitted(shop, input),
    'jobs.end-visit': input => endVisit(shop, input),
    'jobs.reopen-job': input => reopenJob(shop, input),
    'jobs.list-finished-jobs': () => ({ jobs: listFinishedJobs(database) }),
  }
}
