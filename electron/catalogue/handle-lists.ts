import type { ListedFamily } from '../../shared-schemas/catalogue-lists.ts'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { findFamilyOrRefuse, listFamilies } from './family-queries.ts'
import { takeBreaths } from './fitments/take-breaths.ts'
import {
  type BrandCount,
  countModelsByBrand,
  listApplianceTypes,
  pageOf,
  readModelsOfBrands,
} from './model-lists/all-model-queries.ts'
import { listModelsOfFamily } from './model-lists/family-model-queries.ts'
import { keysOfWords, type SearchedModel } from './model-lists/narrow-models.ts'
import { pageModels } from './model-lists/page-models.ts'
import { RecentLists } from './model-lists/recent-lists.ts'
import { normaliseNumber } from './normalise-number.ts'

/** The families that the words leave; a word is sought in code, name, function and types. */
export async function handleListFamilies(
  database: ReadableDatabase,
  { words, from, most }: CheckedInput<'catalogue.list-families'>,
): Promise<Output<'catalogue.list-families'>> {
  const all = await families.read(database, '', async () => listFamilies(database).map(asSearched))
  const keys = keysOfWords(words)
  const left = all.filter(({ text }) => keys.every(key => text.includes(key)))
  const end = most === undefined ? undefined : from + most
  return {
    count: all.length,
    matching: left.length,
    families: left.slice(from, end).map(({ listed }) => listed),
  }
}

function asSearched(listed: ListedFamily) {
  const { family, name, function: does, applianceTypes } = listed
  return { listed, text: [family, name, does, ...applianceTypes].map(normaliseNumber).join('\n') }
}

const families = new RecentLists<readonly ReturnType<typeof asSearched>[]>()

/** The models of a family, or of the whole catalogue, as far as the words leave them. */
export async function handleListModels(
  database: ReadableDatabase,
  { family, ...asked }: CheckedInput<'catalogue.list-models'>,
): Promise<Output<'catalogue.list-models'>> {
  if (family === undefined) return listAllModels(database, asked)
  const { family_id: familyId } = findFamilyOrRefuse(database, family)
  const models = await ofFamilies.read(database, String(familyId), () =>
    takeBreaths(listModelsOfFamily(database, familyId)),
  )
  return pageModels(models, asked)
}

const ofFamilies = new RecentLists<readonly SearchedModel[]>()

async function listAllModels(
  database: ReadableDatabase,
  { words, from, most = mostOfAll }: Omit<CheckedInput<'catalogue.list-models'>, 'family'>,
): Promise<Output<'catalogue.list-models'>> {
  const count = (wanted: string, types: readonly string[]) =>
    counts.read(database, wanted, () => takeBreaths(countModelsByBrand(database, wanted, types)))
  const all = await count('', [])
  const isWhole = keysOfWords(words).length === 0
  const left = isWhole
    ? all
    : await count(words, await types.read(database, '', async () => listApplianceTypes(database)))
  return pageOf(all, left, readModelsOfBrands(database, left, { from, most }))
}

const counts = new RecentLists<readonly BrandCount[]>()
const types = new RecentLists<readonly string[]>()

/** All that is told at once of every model there is; the rest is asked for by pages. */
const mostOfAll = 20_000
