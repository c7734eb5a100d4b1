import { modelId } from '../../shared-schemas/identifiers.ts'
import type { ModelCandidate } from '../../shared-schemas/model-lookup.ts'

/** A candidate with this printed number; its key and the rest follow unless the test says otherwise. */
export function makeCandidate(modelNumber: string, given: Partial<ModelCandidate> = {}): ModelCandidate {
  return {
    modelId: modelId.parse(
      [...modelNumber].reduce((sum, one) => sum * 31 + one.charCodeAt(0), 7) % 1_000_000,
    ),
    brand: 'Ostrel',
    modelNumber,
    key: modelNumber.toUpperCase().replace(/[^\p{L}\p{N}]/gu, ''),
    applianceType: 'dishwasher',
    salesNames: [],
    madeFrom: null,
    madeTo: null,
    score: 1,
    matched: 'model-number',
    differences: [],
    ...given,
  }
}
