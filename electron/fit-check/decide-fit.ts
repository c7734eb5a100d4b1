import type { AskChosen, Verdict } from '../../shared-schemas/fit-check.ts'
import type { PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import { chooseAskedReadings } from './choose-asked-readings.ts'
import type { KnownAnswer } from './decide-with-all-readings.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import { type AlikeModels, type Possibility, type Readings, supposeAppliances } from './suppose-appliances.ts'
import { type ReadingChoice, tabulateReadings } from './tabulate-readings.ts'

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
  /** In the order in which reading them decides soonest. */
  readonly ask: readonly AskedFor[]
  /** Whether fewer readings might do; null where none was chosen. */
  readonly askChosen: AskChosen | null
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
  const asked = verdict === 'ask' ? askAbout(dossier, models, readings, alike) : nothingAsked
  const answers = distinctAnswers(alike)
  const onlyCurrent = new Set(answers.map(({ current }) => current)).size === 1 ? answers[0] : undefined
  return {
    verdict,
    models: countModels(alike),
    current: onlyCurrent?.current ?? null,
    chain: onlyCurrent?.chain ?? [dossier.asked.partId],
    alsoNeeds: verdict === 'fits-with-changes' ? (answers[0]?.alsoNeeds ?? []) : [],
    ...asked,
    answers,
  }
}

type Asked = Pick<FitDecision, 'ask' | 'askChosen'>

const nothingAsked: Asked = { ask: [], askChosen: null }

function askAbout(
  dossier: PartDossier,
  models: readonly ModelFacts[],
  readings: Readings,
  alike: readonly AlikeModels[],
): Asked {
  const toldApart =
    models.length > fewModels
      ? alike
      : supposeAppliances(dossier, models, readings, { dateTellsModels: true })
  const { readings: asked, chosen } = chooseAskedReadings(tabulateReadings(toldApart, outcomeLabel))
  // All plate positions are one thing to ask for; every other reading is its own.
  const joined = Map.groupBy(asked, choice => `${choice.of} ${choice.reading}`)
  return {
    ask: [...joined.values()].map(choices => askFor(choices, toldApart)),
    askChosen: chosen,
  }
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

/** Two suppositions need no telling apart when the same part would be sold with the same changes, or none would. */
function outcomeLabel({ answer }: Possibility): string {
  return answer.outcome === 'yes' ? `yes ${answer.current} ${[...answer.alsoNeeds].sort().join('|')}` : 'no'
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
  // Kinds of models share many of their answers.
  const names = new Map<KnownAnswer, string>()
  for (const { models, possibilities } of alike) {
    const ofKind = new Map<string, KnownAnswer>()
    for (const { answer } of possibilities) {
      const name = names.get(answer) ?? nameAnswer(answer)
      names.set(answer, name)
      ofKind.set(name, answer)
    }
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

function askFor(choices: readonly ReadingChoice[], alike: readonly AlikeModels[]): AskedFor {
  const groups = new Map<string, Set<Possibility>>()
  for (const kind of alike) {
    for (const [value, possibilities] of shownIn(kind, choices)) {
      const group = groups.get(value) ?? new Set()
      for (const possibility of possibilities) group.add(possibility)
      groups.set(value, group)
    }
  }
  return {
    reading: choices[0]?.reading ?? '',
    positions: choices.flatMap(({ position }) => (position === null ? [] : [position])),
    means: [...groups].map(([value, group]) => ({ value, verdict: verdictOver([...group]) })),
  }
}

/** By value, in which ways an appliance of this kind that shows it may be. */
function shownIn(
  { models, possibilities }: AlikeModels,
  choices: readonly ReadingChoice[],
): ReadonlyMap<string, readonly Possibility[]> {
  const [choice] = choices
  if (choice?.of === 'possibility')
    return Map.groupBy(possibilities, possibility => choice.shows(possibility) || nothingThere)
  const characters = choices.flatMap(one => (one.of === 'model' ? one.shows : []))
  const values = models.map(model => characters.map(shows => shows(model) || nothingThere).join(' '))
  return new Map(values.map(value => [value, possibilities]))
}

/** A position past the end of a shorter number. */
export const nothingThere = '–'
