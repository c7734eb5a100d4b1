import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { listModelsOfAnyTerms } from '../catalogue/fitments/fitment-queries.ts'
import { takeBreaths } from '../catalogue/fitments/take-breaths.ts'
import { readApplianceTypes } from '../catalogue/model-lists/appliance-type-queries.ts'
import { asSearched, type SearchedModel } from '../catalogue/model-lists/narrow-models.ts'
import { pageModels } from '../catalogue/model-lists/page-models.ts'
import { RecentLists } from '../catalogue/model-lists/recent-lists.ts'
import { sortByBrand } from '../catalogue/model-lists/sort-by-brand.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { currentShelf } from './dossier-queries.ts'
import { listBareModels, readTermsOfModels } from './model-facts-queries.ts'
import type { PartDossier } from './part-dossier.ts'
import { findPartOrRefuse } from './settle-subject.ts'
import { type AlikeModels, type Possibility, supposeAppliances } from './suppose-appliances.ts'
import { wordConditions } from './word-answer.ts'

/**
 * Every model the part goes into, surely or under conditions that are named; by brand and number. Others are answered
 * while a long list is made.
 */
export async function handleListFittedModels(
  database: ReadableDatabase,
  asked: CheckedInput<'fit-check.list-fitted-models'>,
): Promise<Output<'fit-check.list-fitted-models'>> {
  const { partId, partNumber } = findPartOrRefuse(database, asked.part)
  const models = await recent.read(database, String(partId), () =>
    takeBreaths(listFittedModels(database, currentShelf(database).dossier(partId))),
  )
  return { partNumber, ...pageModels(models, asked) }
}

const recent = new RecentLists<readonly SearchedModel[]>()

function* listFittedModels(
  database: ReadableDatabase,
  dossier: PartDossier,
): Generator<number, SearchedModel[]> {
  const termsIds = new Set(dossier.statements.map(({ termsId }) => termsId))
  const modelIds = listModelsOfAnyTerms(database, termsIds) as ModelId[]
  const terms = readTermsOfModels(database, modelIds, termsIds)
  const found: SearchedModel[] = []
  for (let at = 0; at < modelIds.length; at += atOnce) {
    yield at
    const some = modelIds.slice(at, at + atOnce)
    const types = readApplianceTypes(database, some)
    const alike = supposeAll(dossier, listBareModels(database, some), terms)
    found.push(...alike.flatMap(kind => listFitted(kind, types)))
  }
  return yield* sortByBrand(found)
}

/** Some milliseconds' worth. */
const atOnce = 500

/** Every way in which appliances of these models may be. */
function supposeAll(
  dossier: PartDossier,
  models: ReturnType<typeof listBareModels>,
  terms: ReturnType<typeof readTermsOfModels>,
): AlikeModels[] {
  const unread = { made: null, serial: null, stated: new Map<string, string>() }
  const withTerms = models.map(model => ({
    ...model,
    termsIds: terms.get(model.modelId) ?? new Set<number>(),
  }))
  return supposeAppliances(dossier, withTerms, unread)
}

function listFitted(
  { models, possibilities }: AlikeModels,
  types: ReadonlyMap<number, string>,
): SearchedModel[] {
  const yes = possibilities.filter(({ answer }) => answer.outcome === 'yes')
  if (yes.length === 0) return []
  const conditions = conditionsOf(possibilities, yes)
  return models.map(({ modelId, brand, modelNumber }) =>
    asSearched({ brand, modelNumber, applianceType: types.get(modelId) ?? '', conditions }),
  )
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
