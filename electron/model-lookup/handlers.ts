import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import type { Shop } from '../requests/shop.ts'
import { readCandidateFacts } from './candidate-queries.ts'
import { currentModelIndex } from './current-model-index.ts'
import { findModels } from './find-models.ts'

export function modelLookupHandlers({ database }: Pick<Shop, 'database'>): HandlersOf<'model-lookup'> {
  return {
    'model-lookup.find-models': question => {
      const readFacts = (modelId: ModelId) => readCandidateFacts(database, modelId)
      return findModels({ index: currentModelIndex(database), readFacts }, question)
    },
  }
}
