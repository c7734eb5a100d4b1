import type { SearchedModel } from './narrow-models.ts'

/** By brand and number; yields between brands, so that others are answered while a long list is sorted. */
export function* sortByBrand(models: readonly SearchedModel[]): Generator<number, SearchedModel[]> {
  const byBrand = Map.groupBy(models, ({ brand }) => brand)
  const sorted: SearchedModel[] = []
  for (const brand of [...byBrand.keys()].sort()) {
    yield sorted.length
    for (const model of (byBrand.get(brand) ?? []).sort(byNumber)) sorted.push(model)
  }
  return sorted
}

function byNumber({ modelNumber: one }: SearchedModel, { modelNumber: other }: SearchedModel): number {
  return one < other ? -1 : one > other ? 1 : 0
}
