import { z } from 'zod'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import { listModelsOfTerms } from '../catalogue/fitments/fitment-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'

export interface Sisters {
  /** Every model of the platform, those asked about among them. */
  readonly all: ReadonlySet<number>
  /** Those of which any of the terms is said, each with these. */
  readonly termsOfModels: ReadonlyMap<ModelId, ReadonlySet<number>>
}

/** The models of the platform on which all of these stand; none where they do not all stand on one. */
export function readSisters(
  database: ReadableDatabase,
  modelIds: readonly ModelId[],
  termsIds: readonly number[],
): Sisters {
  const platform = findOnlyPlatform(database, modelIds)
  if (platform === null) return noSisters
  const all = new Set<number>()
  for (const [modelId] of database.tuples<[number]>(modelsOnPlatform, platform)) all.add(modelId)
  const termsOfModels = new Map<ModelId, Set<number>>()
  for (const termsId of termsIds)
    for (const id of listModelsOfTerms(database, termsId)) {
      if (!all.has(id)) continue
      const modelId = id as ModelId
      const known = termsOfModels.get(modelId)
      if (known === undefined) termsOfModels.set(modelId, new Set([termsId]))
      else known.add(termsId)
    }
  return { all, termsOfModels }
}

const noSisters: Sisters = { all: new Set(), termsOfModels: new Map() }

const modelsOnPlatform = 'SELECT model_id FROM model WHERE platform = ?'

/** The platform on which all of these models stand, or null. */
export function findOnlyPlatform(database: ReadableDatabase, modelIds: readonly ModelId[]): string | null {
  const platforms = database.rows(
    platformRow,
    'SELECT DISTINCT platform FROM json_each(?) AS asked JOIN model ON model_id = asked.value LIMIT 2',
    JSON.stringify(modelIds),
  )
  return platforms.length === 1 ? (platforms[0]?.platform ?? null) : null
}

const platformRow = z.object({ platform: z.string().nullable() })
