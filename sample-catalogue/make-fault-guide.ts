import type { SparseRow } from './catalogue-rows.ts'
import { applianceGuides } from './fault-guide/all-guides.ts'
import { fittingNotes } from './fault-guide/fitting-notes.ts'
import type { ApplianceGuide, GuideCheck, Shares } from './fault-guide/guide-entries.ts'
import type { SampleFamily } from './make-families.ts'

const source = 'common practice'

/** One row a cause of a symptom; the other words for a symptom stand on its first. */
export function listFaults(families: readonly SampleFamily[]): SparseRow<'faults.csv'>[] {
  return applianceGuides.flatMap(({ type, symptoms }) =>
    symptoms.flatMap(({ symptom, alsoSaid, causes }) =>
      causes.map(({ cause, endsIn, licensedFor = '', kinds, weight, advice }, at) => ({
        appliance_type: type,
        symptom,
        also_said: at === 0 ? alsoSaid.join('|') : '',
        cause,
        ends_in: endsIn,
        licensed_for: licensedFor,
        families: listFamilies(families, kinds),
        weight: String(weight),
        advice,
        source,
      })),
    ),
  )
}

export function listFaultChecks(): SparseRow<'fault_checks.csv'>[] {
  return applianceGuides.flatMap(({ type, checks }) =>
    checks.map(check => ({
      appliance_type: type,
      check: check.check,
      symptoms: (check.symptoms ?? []).join('|'),
      how: check.how,
      measure: check.measure ?? '',
      expected: check.expected ?? '',
      tolerance: check.tolerance ?? '',
      outcomes: writeShares(check, check.otherwise),
      minutes: String(check.minutes),
      tools: (check.tools ?? []).join('|'),
      hazards: (check.hazards ?? []).join('|'),
      competence: check.competence,
      source,
    })),
  )
}

export function listFaultOutcomes(): SparseRow<'fault_outcomes.csv'>[] {
  return applianceGuides.flatMap(guide => guide.checks.flatMap(check => listTold(guide, check)))
}

export function listFittingNotes(families: readonly SampleFamily[]): SparseRow<'fitting_notes.csv'>[] {
  return fittingNotes.map(({ stage, note, kinds }) => ({
    stage,
    note,
    families: listFamilies(families, kinds),
    source,
  }))
}

function listTold({ type, symptoms }: ApplianceGuide, check: GuideCheck): SparseRow<'fault_outcomes.csv'>[] {
  const causes = new Set(symptoms.flatMap(symptom => symptom.causes.map(({ cause }) => cause)))
  return Object.entries(check.tells).map(([cause, shares]) => {
    if (!causes.has(cause)) throw new Error(`${type}: ${check.check} tells of “${cause}”, which is no cause`)
    return {
      appliance_type: type,
      check: check.check,
      cause,
      outcomes: writeShares(check, shareOutRest(check, shares)),
    }
  })
}

/** What is left by the outcomes that are named, the others share as they do elsewhere. */
function shareOutRest({ otherwise }: GuideCheck, told: Shares): Shares {
  const unnamed = Object.entries(otherwise).filter(([outcome]) => !(outcome in told))
  const usually = 1 - total(Object.values(otherwise))
  const left = (1 - total(Object.values(told))) / (usually + total(unnamed.map(([, share]) => share)))
  return { ...told, ...Object.fromEntries(unnamed.map(([outcome, share]) => [outcome, share * left])) }
}

/** In thousandths, so that they make 1 exactly; nothing is impossible. */
function writeShares({ check, usual, otherwise }: GuideCheck, shares: Shares): string {
  const stranger = Object.keys(shares).find(outcome => !(outcome in otherwise))
  if (stranger !== undefined) throw new Error(`${check} has no outcome “${stranger}” beside its first`)
  const others = Object.keys(otherwise).map(
    outcome => [outcome, Math.max(1, Math.round((shares[outcome] ?? 0) * 1000))] as const,
  )
  const rest = 1000 - total(others.map(([, share]) => share))
  if (rest < 1) throw new Error(`${check} leaves nothing for “${usual}”: ${JSON.stringify(shares)}`)
  return [[usual, rest] as const, ...others].map(([outcome, share]) => `${outcome}=${share / 1000}`).join('|')
}

function total(figures: readonly number[]): number {
  return figures.reduce((sum, figure) => sum + figure, 0)
}

function listFamilies(families: readonly SampleFamily[], kinds: readonly string[]): string {
  const named = kinds.flatMap(kind => {
    const ofKind = families.filter(family => family.kind.kind === kind)
    if (ofKind.length === 0) throw new Error(`no kind of part is called “${kind}”`)
    return ofKind.map(({ code }) => code)
  })
  return named.join('|')
}
