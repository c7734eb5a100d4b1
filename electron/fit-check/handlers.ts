import type { ReadableDatabase } from '../database/handles.ts'
import { currentModelIndex } from '../model-lookup/current-model-index.ts'
import { findOpenModels } from '../model-lookup/find-open-models.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import { handleJudgeFit } from './handle-judge-fit.ts'
import { handleListFittedModels } from './handle-list-fitted-models.ts'
import { handleListFittingParts, type ReadStock } from './handle-list-fitting-parts.ts'

export interface FitCheckNeeds {
  readonly database: ReadableDatabase
  readonly readStock: ReadStock
}

export function fitCheckHandlers({ database, readStock }: FitCheckNeeds): HandlersOf<'fit-check'> {
  return {
    'fit-check.judge-fit': question => handleJudgeFit(database, openModelsOf(database, question), question),
    'fit-check.list-fitting-parts': question =>
      handleListFittingParts(database, readStock, openModelsOf(database, question), question),
    'fit-check.list-fitted-models': ({ part }) => handleListFittedModels(database, part),
  }
}

function openModelsOf(
  database: ReadableDatabase,
  { model, brand }: { readonly model: string; readonly brand?: string | undefined },
): OpenModels {
  return findOpenModels(
    currentModelIndex(database),
    brand === undefined ? { text: model } : { text: model, brand },
  )
}
