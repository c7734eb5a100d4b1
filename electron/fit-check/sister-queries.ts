import { z } from 'zod'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { fitmentsOfTerms } from './model-facts-queries.ts'

export interface Sisters {
  /** How many other models there are on the platform. */
  readonly all: number
  /** Those of which any of the terms is said, each with these. */
  readonly termsOfModels: ReadonlyMap<ModelId, ReadonlySet<number>>
}

/** The other models of the platform on which all of these stand; none where they do not all stand on one. */
export function readSisters(
  database: ReadableDatabase,
  modelIds: readonly ModelId[],
  termsIds: readonly number[],
): Sisters {
  const platform = readOnlyPlatform(database, modelIds)
  if (platform === null) return noSisters
  const sisters = new Set<number>()
  for (const [modelId] of database.tuples<[number]>(modelsOnPlatform, platform)) sisters.add(modelId)
  for (const modelId of modelIds) sisters.delete(modelId)
  const termsOfModels = new Map<ModelId, Set<number>>()
  for (const [modelId, termsId] of database.tuples<[ModelId, number]>(
    fitmentsOfTerms,
    JSON.stringify(termsIds),
  )) {
    if (!sisters.has(modelId)) continue
    const known = termsOfModels.get(modelId)
    if (known === undefined) termsOfModels.set(modelId, new Set([termsId]))
    else known.add(termsId)
  }
  return { all: sisters.size, termsOfModels }
}

const noSisters: Sisters = { all: 0, termsOfModels: new Map() }

const modelsOnPlatform = 'SELECT model_id FROM model WHERE platform = ?'

function readOnlyPlatform(database: ReadableDatabase, modelIds: readonly ModelId[]): string | null {
  const platforms = database.rows(
    z.object({ platform: z.string().nullable() }),
    'SELECT DISTINCT platform FROM json_each(?) AS asked JOIN model ON model_id = asked.value LIMIT 2',
    JSON.stringify(modelIds),
  )
  return platforms.length === 1 ? (platforms[0]?.platform ?? null) : null
}
