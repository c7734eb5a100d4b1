import type { ModelPage } from '../../../shared-schemas/model-list.ts'
import { narrowModels, type SearchedModel } from './narrow-models.ts'

export interface PageAsked {
  readonly words: string
  readonly from: number
  readonly most?: number | undefined
}

/** A stretch of the models that the words leave, and how many those are of each brand. The list is sorted by brand. */
export function pageModels(sorted: readonly SearchedModel[], { words, from, most }: PageAsked): ModelPage {
  const left = narrowModels(sorted, words)
  return {
    count: sorted.length,
    matching: left.length,
    brands: countByBrand(left),
    models: left
      .slice(from, most === undefined ? undefined : from + most)
      .map(({ brand, modelNumber, applianceType, conditions }) => ({
        brand,
        modelNumber,
        applianceType,
        conditions,
      })),
  }
}

function countByBrand(models: readonly SearchedModel[]): ModelPage['brands'] {
  const counts = new Map<string, number>()
  for (const { brand } of models) counts.set(brand, (counts.get(brand) ?? 0) + 1)
  return [...counts].map(([brand, count]) => ({ brand, models: count }))
}
