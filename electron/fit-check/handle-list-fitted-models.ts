import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { Output } from '../../shared-schemas/index.ts'
import { listModelsOfAnyTerms } from '../catalogue/fitments/fitment-queries.ts'
import { findPartByNumber, listNearestPartNumbers } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { currentShelf } from './dossier-queries.ts'
import { listBareModels, readTermsOfModels } from './model-facts-queries.ts'
import type { PartDossier } from './part-dossier.ts'
import { type AlikeModels, type Possibility, supposeAppliances } from './suppose-appliances.ts'
import { wordConditions } from './word-answer.ts'

type FittedModels = Output<'fit-check.list-fitted-models'>

/** Every model the part goes into, surely or under conditions that are named; by brand and number. */
export function handleListFittedModels(database: ReadableDatabase, typed: string): FittedModels {
  const part = findPartByNumber(database, typed)
  if (part === undefined)
    throw new Refusal({ code: 'part-not-found', typed, nearest: listNearestPartNumbers(database, typed) })
  const dossier = currentShelf(database).dossier(part.partId)
  const models = supposeAllSpokenOf(database, dossier).flatMap(listFitted).sort(byBrandAndNumber)
  return { partNumber: part.partNumber, count: models.length, models }
}

/** The models that any statement of the dossier speaks of, and every way they may be. */
function supposeAllSpokenOf(database: ReadableDatabase, dossier: PartDossier): AlikeModels[] {
  const termsIds = new Set(dossier.statements.map(({ termsId }) => termsId))
  const modelIds = listModelsOfAnyTerms(database, termsIds) as ModelId[]
  const terms = readTermsOfModels(database, modelIds, termsIds)
  const models = listBareModels(database, modelIds).map(model => ({
    ...model,
    termsIds: terms.get(model.modelId) ?? new Set<number>(),
  }))
  const unread = { made: null, serial: null, stated: new Map<string, string>() }
  return supposeAppliances(dossier, models, unread)
}

function listFitted({ models, possibilities }: AlikeModels): FittedModels['models'] {
  const yes = possibilities.filter(({ answer }) => answer.outcome === 'yes')
  if (yes.length === 0) return []
  const conditions = conditionsOf(possibilities, yes)
  return models.map(({ brand, modelNumber }) => ({ brand, modelNumber, conditions }))
}

/** The conditions of the statements that carry the yes, and the readings without which it is no. */
function conditionsOf(all: readonly Possibility[], yes: readonly Possibility[]): string[] {
  const stated = new Set(yes.flatMap(({ answer }) => answer.statements.flatMap(wordConditions)))
  return [...stated, ...attributeConditions(all, yes), ...needsOf(yes)]
}

/** Attributes that show something in every yes and other things besides: `volts 220..240 V`. */
function attributeConditions(all: readonly Possibility[], yes: readonly Possibility[]): string[] {
  const names = new Set(all.flatMap(({ shows }) => [...shows.keys()]))
  return [...names]
    .filter(name => name !== 'made' && name !== 'serial')
    .flatMap(name => {
      const [inYes, inAll] = [yes, all].map(some => new Set(some.map(({ shows }) => shows.get(name))))
      return inYes?.size === 1 && inAll !== undefined && inAll.size > 1 ? [`${name} ${[...inYes][0]}`] : []
    })
}

function needsOf(yes: readonly Possibility[]): string[] {
  return [...new Set(yes.flatMap(({ answer }) => answer.alsoNeeds))].map(number => `with ${number}`)
}

function byBrandAndNumber(
  one: FittedModels['models'][number],
  other: FittedModels['models'][number],
): number {
  if (one.brand !== other.brand) return one.brand < other.brand ? -1 : 1
  return one.modelNumber < other.modelNumber ? -1 : one.modelNumber > other.modelNumber ? 1 : 0
}
