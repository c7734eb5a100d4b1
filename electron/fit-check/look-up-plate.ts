import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { currentModelIndex } from '../model-lookup/current-model-index.ts'
import { decideOpenModels, findOpenModels } from '../model-lookup/find-open-models.ts'
import type { OpenModel, OpenModels } from '../model-lookup/open-models.ts'
import { settleModel } from './settle-subject.ts'

interface Plate {
  readonly model: string
  readonly brand?: string | undefined
}

/** Every model that a plate leaves open; refused where too little of it was read, or its brand is not known. */
export function openModelsOf(database: ReadableDatabase, plate: Plate): OpenModels {
  return findOpenModels(currentModelIndex(database), asText(plate))
}

/** The same by their ids; none where it cannot be looked up. */
export function modelIdsOf(database: ReadableDatabase, plate: Plate): ModelId[] {
  const decided = decideOpenModels(currentModelIndex(database), asText(plate))
  return decided.ok ? decided.value.models.map(({ modelId }) => modelId) : []
}

/** What a plate leaves open, in short, and the one model if its number settles it. Null where it cannot be looked up. */
export function lookUpPlate(database: ReadableDatabase, plate: Plate) {
  const decided = decideOpenModels(currentModelIndex(database), asText(plate))
  if (!decided.ok) return null
  const { outcome, models } = decided.value
  const settled = settleModel(decided.value)
  return {
    ...{ outcome, open: models.length, settled: settled.ok ? settled.value : null },
    first: models.slice(0, mostNamed).map(nameModel),
  }
}

const mostNamed = 3

function nameModel({ brand, modelNumber }: OpenModel): string {
  return `${brand} ${modelNumber}`
}

function asText({ model, brand }: Plate) {
  return brand === undefined ? { text: model } : { text: model, brand }
}
