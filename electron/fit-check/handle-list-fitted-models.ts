import { z } from 'zod'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { Output } from '../../shared-schemas/index.ts'
import { findPartByNumber, listNearestPartNumbers } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { currentShelf } from './dossier-queries.ts'
import { listBareModels, readTermsOfModels } from './model-facts-queries.ts'
import type { PartDossier } from './part-dossier.ts'
import { type Supposition, supposeAppliances } from './suppose-appliances.ts'
import { wordConditions } from './word-answer.ts'

type FittedModels = Output<'fit-check.list-fitted-models'>

/** Every model the part goes into, surely or under conditions that are named; by brand and number. */
export function handleListFittedModels(database: ReadableDatabase, typed: string): FittedModels {
  const part = findPartByNumber(database, typed)
  if (part === undefined)
    throw new Refusal({ code: 'part-not-found', typed, nearest: listNearestPartNumbers(database, typed) })
  const dossier = currentShelf(database).dossier(part.partId)
  const fitted = supposeAllSpokenOf(database, dossier).filter(suppositions =>
    suppositions.some(({ answer }) => answer.outcome === 'yes'),
  )
  const models = fitted.map(conditionsOf).sort(byBrandAndNumber)
  return { partNumber: part.partNumber, count: models.length, models }
}

/** For each model that any statement of the dossier speaks of, every way it may be. */
function supposeAllSpokenOf(database: ReadableDatabase, dossier: PartDossier): Supposition[][] {
  const termsIds = new Set(dossier.statements.map(({ termsId }) => termsId))
  const modelIds = listModelsOfTerms(database, [...termsIds])
  const terms = readTermsOfModels(database, modelIds, termsIds)
  const models = listBareModels(database, modelIds).map(model => ({
    ...model,
    termsIds: terms.get(model.modelId) ?? new Set<number>(),
  }))
  const unread = { made: null, serial: null, stated: new Map<string, string>() }
  const byModel = new Map<number, Supposition[]>()
  for (const supposition of supposeAppliances(dossier, models, unread)) {
    const ofModel = byModel.get(supposition.model.modelId)
    if (ofModel === undefined) byModel.set(supposition.model.modelId, [supposition])
    else ofModel.push(supposition)
  }
  return [...byModel.values()]
}

function listModelsOfTerms(database: ReadableDatabase, termsIds: readonly number[]): ModelId[] {
  return database
    .rows(
      z.object({ model_id: z.int() }),
      `SELECT DISTINCT model_id FROM json_each(?) AS asked JOIN fitment ON terms_id = asked.value`,
      JSON.stringify(termsIds),
    )
    .map(row => row.model_id as ModelId)
}

/** The conditions of the statements that carry the yes, and the readings without which it is no. */
function conditionsOf(suppositions: readonly Supposition[]): FittedModels['models'][number] {
  const [first] = suppositions
  if (first === undefined) throw new Error('a fitted model has at least one supposition')
  const yes = suppositions.filter(({ answer }) => answer.outcome === 'yes')
  const stated = new Set(yes.flatMap(({ answer }) => answer.statements.flatMap(wordConditions)))
  const conditions = [...stated, ...attributeConditions(suppositions, yes), ...needsOf(yes)]
  return { brand: first.model.brand, modelNumber: first.model.modelNumber, conditions }
}

/** Attributes that show something in every yes and other things besides: `volts 220..240 V`. */
function attributeConditions(all: readonly Supposition[], yes: readonly Supposition[]): string[] {
  const names = new Set(all.flatMap(({ shows }) => [...shows.keys()]))
  return [...names]
    .filter(name => name !== 'made' && name !== 'serial')
    .flatMap(name => {
      const [inYes, inAll] = [yes, all].map(some => new Set(some.map(({ shows }) => shows.get(name))))
      return inYes?.size === 1 && inAll !== undefined && inAll.size > 1 ? [`${name} ${[...inYes][0]}`] : []
    })
}

function needsOf(yes: readonly Supposition[]): string[] {
  return [...new Set(yes.flatMap(({ answer }) => answer.alsoNeeds))].map(number => `with ${number}`)
}

function byBrandAndNumber(
  one: FittedModels['models'][number],
  other: FittedModels['models'][number],
): number {
  if (one.brand !== other.brand) return one.brand < other.brand ? -1 : 1
  return one.modelNumber < other.modelNumber ? -1 : one.modelNumber > other.modelNumber ? 1 : 0
}
