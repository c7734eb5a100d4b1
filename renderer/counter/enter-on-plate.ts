import type { FoundModels, ModelCandidate } from '../../shared-schemas/model-lookup.ts'
import type { CounterEnquiry } from './counter-enquiry.ts'

export type EnterMeans =
  | { readonly do: 'nothing' }
  | { readonly do: 'go-to-card' }
  | { readonly do: 'point-at'; readonly model: ModelCandidate; readonly isConfirming: true }
  | { readonly do: 'take'; readonly model: ModelCandidate }

/** Enter takes a model that is sure, and a doubtful one only the second time. */
export function decideEnter(
  found: Pick<FoundModels, 'outcome' | 'candidates'> | undefined,
  { pointedAt, isConfirming, taken }: Pick<CounterEnquiry, 'pointedAt' | 'isConfirming' | 'taken'>,
): EnterMeans {
  const best = found?.candidates[0]
  if (found === undefined || best === undefined) return { do: 'nothing' }
  if (taken !== null) return { do: 'go-to-card' }
  const model = pointedAt ?? best
  if (found.outcome === 'exact' && model.modelId === best.modelId) return { do: 'go-to-card' }
  return isConfirming ? { do: 'take', model } : { do: 'point-at', model, isConfirming: true }
}
