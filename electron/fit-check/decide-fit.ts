import type { Verdict } from '../../shared-schemas/fit-check.ts'
import type { PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import { chooseAskedReadings, outcomeLabel, type ReadingChoice } from './choose-asked-readings.ts'
import type { KnownAnswer } from './decide-with-all-readings.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import {
  type AlikeModels,
  listSuppositions,
  type Possibility,
  type Readings,
  type Supposition,
  supposeAppliances,
} from './suppose-appliances.ts'

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
  const alike = supposeAppliances(dossier, models, readings)
  const verdict = verdictOver(alike.flatMap(({ possibilities }) => possibilities))
  const asked = verdict === 'ask' ? askAbout(dossier, models, readings) : []
  const answers = distinctAnswers(alike)
  const onlyCurrent = new Set(answers.map(({ current }) => current)).size === 1 ? answers[0] : undefined
  return {
    verdict,
    models: countModels(alike),
    current: onlyCurrent?.current ?? null,
    chain: onlyCurrent?.chain ?? [dossier.asked.partId],
    alsoNeeds: verdict === 'fits-with-changes' ? (answers[0]?.alsoNeeds ?? []) : [],
    ask: asked,
    answers,
  }
}

function askAbout(dossier: PartDossier, models: readonly ModelFacts[], readings: Readings): AskedFor[] {
  const dateTellsModels = models.length <= fewModels
  const suppositions = listSuppositions(supposeAppliances(dossier, models, readings, { dateTellsModels }))
  return joinPositions(chooseAskedReadings(suppositions)).map(choices => askFor(choices, suppositions))
}

/** So many models that telling them apart by when each was made is still quick. */
const fewModels = 50

/** What holds for all of these; `ask` where they differ in what would be sold. */
export function verdictOver(possibilities: readonly Possibility[]): Verdict {
  const [first] = possibilities
  if (first === undefined) return 'no-record'
  const label = outcomeLabel(first)
  if (possibilities.some(possibility => outcomeLabel(possibility) !== label)) return 'ask'
  if (first.answer.outcome === 'yes') return first.answer.alsoNeeds.length > 0 ? 'fits-with-changes' : 'fits'
  // Where some are forbidden and of others nothing is said, the weaker claim is the true one.
  return possibilities.every(({ answer }) => answer.outcome === 'no') ? 'does-not-fit' : 'no-record'
}

function countModels(alike: readonly AlikeModels[]): FitDecision['models'] {
  const counted = { open: 0, yes: 0, no: 0, undecided: 0 }
  for (const { models, possibilities } of alike) {
    const isYes = possibilities.some(({ answer }) => answer.outcome === 'yes')
    const isNo = possibilities.some(({ answer }) => answer.outcome !== 'yes')
    counted.open += models.length
    counted[isYes && isNo ? 'undecided' : isYes ? 'yes' : 'no'] += models.length
  }
  return counted
}

function distinctAnswers(alike: readonly AlikeModels[]): MetAnswer[] {
  const met = new Map<string, MetAnswer>()
  for (const { models, possibilities } of alike) {
    const ofKind = new Map(possibilities.map(({ answer }) => [nameAnswer(answer), answer]))
    for (const [name, answer] of ofKind)
      met.set(name, { ...answer, models: models.length + (met.get(name)?.models ?? 0) })
  }
  return [...met.values()].sort((one, other) => other.models - one.models)
}

function nameAnswer(answer: KnownAnswer): string {
  const { outcome, because, current, alsoNeeds, together, statements, disagreeing } = answer
  const pieces = together.map(({ partId, quantity, from }) => `${partId} ${quantity} ${from}`)
  const terms = statements.map(said => said.termsId)
  return [outcome, because, current, alsoNeeds, pieces, terms, disagreeing].join('\u0001')
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
