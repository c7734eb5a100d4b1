import { decideFit, type FitDecision } from './decide-fit.ts'
import { dayOf } from './fit-record.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import type { Readings } from './suppose-appliances.ts'

/** The run of loading, or the correction, by which the catalogue came to say something, or no longer to say it. */
export interface DatedRun {
  readonly loadRunId: number
  /** In ISO 8601. */
  readonly at: string
  /** Why, where it was a correction. */
  readonly correctionReason: string | null
}

export interface FitmentChange {
  readonly termsId: number
  readonly change: 'said' | 'withdrawn'
  readonly run: DatedRun
}

/** While terms were said of a model. Without `since`: already before dates were kept. Without `until`: still. */
export interface Period {
  readonly termsId: number
  readonly since: DatedRun | null
  readonly until: DatedRun | null
}

export interface SaidOfModel {
  /** What is said now. */
  readonly termsIds: ReadonlySet<number>
  /** In the order in which they came. */
  readonly changes: readonly FitmentChange[]
  /** The run that brought the first fitments, of which no changes were kept one by one; null where it was not kept. */
  readonly firstRun: DatedRun | null
}

/**
 * While each terms were said of the model. Those without a change of their own, or of which the first change is that
 * they were withdrawn, came with the first fitments. What came and went within one run was never said to anybody.
 */
export function datePeriods({ termsIds, changes, firstRun }: SaidOfModel): Period[] {
  const byTerms = Map.groupBy(changes, ({ termsId }) => termsId)
  const spokenOf = new Set([...termsIds, ...byTerms.keys()])
  return [...spokenOf].flatMap(termsId => {
    const periods: Period[] = []
    let open: { readonly since: DatedRun | null } | undefined
    const ofTerms = byTerms.get(termsId) ?? []
    if (ofTerms[0]?.change !== 'said') open = { since: firstRun }
    for (const { change, run } of ofTerms) {
      if (change === 'said') open = { since: run }
      else if (open !== undefined) {
        if (open.since?.loadRunId !== run.loadRunId) periods.push({ termsId, since: open.since, until: run })
        open = undefined
      }
    }
    return open === undefined ? periods : [...periods, { termsId, since: open.since, until: null }]
  })
}

/** What was said of the model at the end of a day, `2026-11-23`. */
export function termsOnDay(periods: readonly Period[], day: string): ReadonlySet<number> {
  const said = periods.filter(
    ({ since, until }) =>
      (since === null || dayOf(since.at) <= day) && (until === null || dayOf(until.at) > day),
  )
  return new Set(said.map(({ termsId }) => termsId))
}

export interface DatedQuestion {
  /** With every statement that was ever said of the model, those taken back among them. */
  readonly dossier: PartDossier
  readonly model: ModelFacts
  readonly periods: readonly Period[]
  readonly readings: Readings
}

/** The verdict by what the catalogue said at the end of a day; attributes and supersessions are those of now. */
export function decideOnDay({ dossier, model, periods, readings }: DatedQuestion, day: string): FitDecision {
  return decideFit(dossier, [{ ...model, termsIds: termsOnDay(periods, day) }], readings)
}
