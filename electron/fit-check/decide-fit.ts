import type { Verdict } from '../../shared-schemas/fit-check.ts'
import type { PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import { chooseAskedReadings, outcomeLabel, type ReadingChoice } from './choose-asked-readings.ts'
import type { KnownAnswer } from './decide-with-all-readings.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import { type Readings, type Supposition, supposeAppliances } from './suppose-appliances.ts'

/** A reading to ask for: what it may show, and what the verdict would be then. */
export interface AskedFor {
  readonly reading: string
  readonly positions: readonly number[]
  readonly means: readonly { readonly value: string; readonly verdict: Verdict }[]
}

export interface FitDecision {
  readonly verdict: Verdict
  readonly models: {
    readonly open: number
    readonly yes: number
    readonly no: number
    readonly undecided: number
  }
  /** What is supplied today; null where that too waits for a reading. */
  readonly current: PartId | null
  readonly chain: readonly PartId[]
  readonly alsoNeeds: readonly PartNumber[]
  readonly ask: readonly AskedFor[]
  /** The different answers met, the most frequent first; a proved verdict rests on all of them. */
  readonly answers: readonly MetAnswer[]
}

export interface MetAnswer extends KnownAnswer {
  /** For how many of the open models it was met. */
  readonly models: number
}

/**
 * The verdict over everything that is left open: `fits` only when every supposition says so, `does-not-fit` only when
 * every one forbids it; otherwise the fewest readings that would decide.
 */
export function decideFit(
  dossier: PartDossier,
  models: readonly ModelFacts[],
  readings: Readings,
): FitDecision {
  const suppositions = supposeAppliances(dossier, models, readings)
  const verdict = verdictOver(suppositions)
  const asked = verdict === 'ask' ? chooseAskedReadings(suppositions) : []
  const answers = distinctAnswers(suppositions)
  const onlyCurrent = new Set(answers.map(({ current }) => current)).size === 1 ? answers[0] : undefined
  return {
    verdict,
    models: countModels(suppositions),
    current: onlyCurrent?.current ?? null,
    chain: onlyCurrent?.chain ?? [dossier.asked.partId],
    alsoNeeds: verdict === 'fits-with-changes' ? (answers[0]?.alsoNeeds ?? []) : [],
    ask: joinPositions(asked).map(choices => askFor(choices, suppositions)),
    answers,
  }
}

/** What holds for all of these; `ask` where they differ in what would be sold. */
export function verdictOver(suppositions: readonly Supposition[]): Verdict {
  const [first] = suppositions
  if (first === undefined) return 'no-record'
  const label = outcomeLabel(first)
  if (suppositions.some(supposition => outcomeLabel(supposition) !== label)) return 'ask'
  if (first.answer.outcome === 'yes') return first.answer.alsoNeeds.length > 0 ? 'fits-with-changes' : 'fits'
  // Where some are forbidden and of others nothing is said, the weaker claim is the true one.
  return suppositions.every(({ answer }) => answer.outcome === 'no') ? 'does-not-fit' : 'no-record'
}

function countModels(suppositions: readonly Supposition[]): FitDecision['models'] {
  const byModel = new Map<number, { yes: boolean; no: boolean }>()
  for (const { model, answer } of suppositions) {
    const seen = byModel.get(model.modelId) ?? { yes: false, no: false }
    if (answer.outcome === 'yes') seen.yes = true
    else seen.no = true
    byModel.set(model.modelId, seen)
  }
  const all = [...byModel.values()]
  return {
    open: all.length,
    yes: all.filter(({ yes, no }) => yes && !no).length,
    no: all.filter(({ yes, no }) => no && !yes).length,
    undecided: all.filter(({ yes, no }) => yes && no).length,
  }
}

function distinctAnswers(suppositions: readonly Supposition[]): MetAnswer[] {
  const met = new Map<string, { answer: KnownAnswer; models: Set<number> }>()
  for (const { answer, model } of suppositions) {
    const name = nameAnswer(answer)
    const known = met.get(name)
    if (known === undefined) met.set(name, { answer, models: new Set([model.modelId]) })
    else known.models.add(model.modelId)
  }
  return [...met.values()]
    .map(({ answer, models }) => ({ ...answer, models: models.size }))
    .sort((one, other) => other.models - one.models)
}

function nameAnswer({ outcome, because, current, alsoNeeds, statements, disagreeing }: KnownAnswer): string {
  return [outcome, because, current, alsoNeeds, statements.map(said => said.termsId), disagreeing].join(
    '\u0001',
  )
}

/** All plate positions are one thing to ask for; every other reading is its own. */
function joinPositions(asked: readonly ReadingChoice[]): (readonly ReadingChoice[])[] {
  const positions = asked.filter(({ reading }) => reading === 'model-number')
  const others = asked.filter(({ reading }) => reading !== 'model-number').map(choice => [choice])
  return positions.length > 0 ? [positions, ...others] : others
}

function askFor(choices: readonly ReadingChoice[], suppositions: readonly Supposition[]): AskedFor {
  const groups = new Map<string, Supposition[]>()
  for (const supposition of suppositions) {
    const value = choices.map(({ shows }) => shows(supposition) || nothingThere).join(' ')
    const group = groups.get(value)
    if (group === undefined) groups.set(value, [supposition])
    else group.push(supposition)
  }
  return {
    reading: choices[0]?.reading ?? '',
    positions: choices.flatMap(({ position }) => (position === null ? [] : [position])),
    means: [...groups].map(([value, group]) => ({ value, verdict: verdictOver(group) })),
  }
}

/** A position past the end of a shorter number. */
export const nothingThere = '–'
