import type { Reason } from '../../shared-schemas/fit-check.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import type { FitDecision } from './decide-fit.ts'

/** A decision, with what is to be said of the model number itself. */
export type ConfirmedDecision = FitDecision & { readonly modelReasons: readonly Reason[] }

/**
 * A number that differs from every model's is nobody's until a person confirms it: whatever the near models would
 * take, the verdict is to ask for the characters in which they differ from what was typed.
 */
export function confirmModel(open: OpenModels, decision: FitDecision): ConfirmedDecision {
  if (open.agreement !== 'differs') return { ...decision, modelReasons: [] }
  const [nearest] = open.models
  const positions = nearest === undefined ? [] : differingPositions(open.key, nearest.key)
  return {
    ...decision,
    verdict: 'ask',
    alsoNeeds: [],
    models: { ...decision.models, yes: 0, no: 0, undecided: decision.models.open },
    ask: [
      {
        reading: 'model-number',
        positions,
        means: open.models.slice(0, mostNearNamed).map(model => ({
          value: model.modelNumber,
          verdict: open.models.length === 1 ? decision.verdict : 'ask',
        })),
      },
    ],
    askChosen: null,
    modelReasons: [
      {
        code: 'model-not-confirmed',
        text: `No model is called ${open.typed}. Nearest: ${open.models
          .slice(0, mostNearNamed)
          .map(model => `${model.brand} ${model.modelNumber}`)
          .join(', ')}. Confirm the number before anything is ordered.`,
        source: null,
      },
    ],
  }
}

const mostNearNamed = 3

/** Positions, from 1 over the catalogue's key, between the stretch in which both begin alike and that in which both end alike. */
export function differingPositions(typed: string, catalogue: string): number[] {
  let start = 0
  while (start < typed.length && typed[start] === catalogue[start]) start += 1
  let end = 0
  const longestEnd = Math.min(typed.length, catalogue.length) - start
  while (end < longestEnd && typed[typed.length - 1 - end] === catalogue[catalogue.length - 1 - end]) end += 1
  const last = Math.max(catalogue.length - end, start + 1)
  return Array.from({ length: Math.min(last, catalogue.length) - start }, (_, at) => start + at + 1)
}
