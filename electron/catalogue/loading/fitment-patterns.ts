import type { ReadableDatabase } from '../../database/handles.ts'
import type { FitmentWriter } from '../fitment-writer.ts'
import { listPatternsOfBrand } from '../fitments/fitment-pattern-queries.ts'
import { matchModelPattern } from './match-model-pattern.ts'

interface AddedModel {
  readonly brandId: number
  readonly key: string
  readonly modelId: number
}

/** Fitments that were listed with wildcards, in whatever load, hold for models that have come since. */
export function coverAddedModels(
  database: ReadableDatabase,
  fitments: FitmentWriter,
  added: readonly AddedModel[],
): void {
  fitments.sayAll(listCovered(database, added))
}

function* listCovered(
  database: ReadableDatabase,
  added: readonly AddedModel[],
): Iterable<readonly [modelId: number, termsId: number]> {
  for (const [brandId, models] of groupByBrand(added))
    for (const { pattern, termsId } of listPatternsOfBrand(database, brandId))
      for (const modelId of matchModelPattern(pattern, models)) yield [modelId, termsId]
}

function groupByBrand(added: readonly AddedModel[]): Map<number, Map<string, number>> {
  const groups = new Map<number, Map<string, number>>()
  for (const { brandId, key, modelId } of added) {
    const models = groups.get(brandId) ?? new Map<string, number>()
    groups.set(brandId, models.set(key, modelId))
  }
  return groups
}
