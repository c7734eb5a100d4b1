import type { Job, JobPart } from '../../shared-schemas/jobs.ts'
import type { Reservation } from '../../shared-schemas/stock-ledger.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { partNumbered } from '../stock-ledger/named-things.ts'
import { listReservations } from '../stock-ledger/reservation-queries.ts'
import { decideState } from './decide-state.ts'
import { type FoundPart, listJobParts, listNeeds } from './job-part-queries.ts'
import { type JobSheet, plateOf } from './job-sheet.ts'
import { type FoundJob, listOpenedOn, readSheet } from './job-sheet-queries.ts'
import { listVisits } from './job-visit-queries.ts'
import type { JobsShop, PlateModels } from './jobs-shop.ts'
import { markMetNeeds, reckonInHand } from './reckon-parts.ts'

/** A job as people read it: what is known, needed, taken, fitted and brought back, and how it stands. */
export function tellJob(database: ReadableDatabase, shop: JobsShop, { job, saidByFile }: FoundJob): Job {
  const sheet = readSheet(database, job)
  const models = shop.lookUpPlate(plateOf(sheet))
  const reservations = listReservations(database, { reference: job })
  const went = listJobParts(database, job)
  const visits = listVisits(database, job)
  const { van, customer, ...rest } = sheet
  return {
    ...withoutNulls({ ...rest, van, customer }),
    ...{ job, date: sheet.date, model: sheet.model, symptom: sheet.symptom },
    ...decideState(visits, saidByFile),
    models: models && tellModels(models),
    needs: markMetNeeds(listNeeds(database, job), went).map(need => ({
      ...{ family: need.family, familyName: need.familyName, partNumber: need.partNumber },
      ...{ quantity: need.quantity, isMet: need.isMet },
    })),
    parts: listConcerned(database, went, reservations).map(part =>
      tellPart(part, reservations, models === null ? null : judge(shop, sheet, part)),
    ),
    reservations,
    visits,
    openedOn: listOpenedOn(database, job),
  }
}

function tellModels({ outcome, open, settled, first }: PlateModels): NonNullable<Job['models']> {
  const named = settled && {
    brand: settled.brand,
    modelNumber: settled.modelNumber,
    applianceType: settled.applianceType,
  }
  return { outcome, open, settled: named, first: [...first] }
}

/** What went out for the job, and what is kept for it without having gone anywhere. */
function listConcerned(
  database: ReadableDatabase,
  went: readonly FoundPart[],
  reservations: readonly Reservation[],
): FoundPart[] {
  const moved = went.filter(({ taken, broughtBack, fitted }) => taken + broughtBack + Math.abs(fitted) > 0)
  const known = new Set(moved.map(({ partNumber }) => partNumber as string))
  const keptOnly = [...new Set(reservations.map(({ partNumber }) => partNumber))].filter(
    partNumber => !known.has(partNumber),
  )
  return [
    ...moved,
    ...keptOnly.map(partNumber => ({
      ...partNumbered(database, partNumber),
      ...{ taken: 0, broughtBack: 0, fitted: 0, takenFrom: null },
    })),
  ]
}

function judge(shop: JobsShop, sheet: JobSheet, { partNumber }: FoundPart) {
  const { verdict, cautions } = shop.judgeFit({ ...plateOf(sheet), part: partNumber })
  return { verdict, cautions }
}

function tellPart(
  part: FoundPart,
  reservations: readonly Reservation[],
  judged: (Pick<JobPart, 'cautions'> & { readonly verdict: NonNullable<JobPart['verdict']> }) | null,
): JobPart {
  const { partNumber, family, description, taken, broughtBack, fitted, takenFrom } = part
  return {
    ...{ partNumber, family, description, taken, broughtBack, fitted, takenFrom },
    verdict: judged?.verdict ?? null,
    cautions: judged?.cautions ?? [],
    kept: reservations
      .filter(kept => kept.partNumber === partNumber)
      .reduce((sum, { quantity }) => sum + quantity, 0),
    inHand: reckonInHand(part),
  }
}

type WithoutNulls<Facts> = { [Name in keyof Facts]?: Exclude<Facts[Name], null> }

/** What is not known is absent, as in the request that wrote it. */
function withoutNulls<Facts extends object>(facts: Facts): WithoutNulls<Facts> {
  return Object.fromEntries(
    Object.entries(facts).filter(([, value]) => value !== null),
  ) as WithoutNulls<Facts>
}
