import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { listTakers } from './hint-from-sisters.ts'
import { listBareModels } from './model-facts-queries.ts'
import type { PartDossier } from './part-dossier.ts'
import { findOnlyPlatform, readSisters } from './sister-queries.ts'

/** A platform's models, and those of them that take a part whatever their plates read. */
export interface TakersOnPlatform {
  readonly all: ReadonlySet<number>
  readonly taking: ReadonlySet<number>
}

/**
 * Which models of a platform take a part, worked out once for each platform: it does not depend on which of its
 * models is asked about. Belongs to a shelf and is thrown away with it when the catalogue changes.
 */
export class SisterShelf {
  readonly #database: ReadableDatabase
  readonly #known = new WeakMap<PartDossier, Map<string, TakersOnPlatform>>()

  constructor(database: ReadableDatabase) {
    this.#database = database
  }

  takers(dossier: PartDossier, modelIds: readonly ModelId[]): TakersOnPlatform {
    const platform = findOnlyPlatform(this.#database, modelIds)
    if (platform === null) return noTakers
    const ofDossier = this.#known.get(dossier) ?? new Map<string, TakersOnPlatform>()
    this.#known.set(dossier, ofDossier)
    const known = ofDossier.get(platform) ?? this.#workOut(dossier, modelIds)
    ofDossier.set(platform, known)
    return known
  }

  #workOut(dossier: PartDossier, modelIds: readonly ModelId[]): TakersOnPlatform {
    const termsIds = dossier.statements.map(({ termsId }) => termsId)
    const { all, termsOfModels } = readSisters(this.#database, modelIds, termsIds)
    const terms: ReadonlyMap<number, ReadonlySet<number>> = termsOfModels
    const spokenOf = listBareModels(this.#database, [...termsOfModels.keys()]).map(model => ({
      ...model,
      termsIds: terms.get(model.modelId) ?? new Set<number>(),
    }))
    return { all, taking: new Set(listTakers(dossier, spokenOf).map(({ modelId }) => modelId)) }
  }
}

const noTakers: TakersOnPlatform = { all: new Set(), taking: new Set() }
