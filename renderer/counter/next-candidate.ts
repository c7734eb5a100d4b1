import type { ModelCandidate } from '../../shared-schemas/model-lookup.ts'

/** The model that an arrow key leads to. From nowhere, down is the best and up the last; the ends do not wrap. */
export function nextCandidate(
  candidates: readonly ModelCandidate[],
  pointedAt: ModelCandidate | null,
  key: 'ArrowDown' | 'ArrowUp',
): ModelCandidate | undefined {
  const at = candidates.findIndex(({ modelId }) => modelId === pointedAt?.modelId)
  if (at < 0) return key === 'ArrowDown' ? candidates[0] : candidates.at(-1)
  return candidates[key === 'ArrowDown' ? Math.min(at + 1, candidates.length - 1) : Math.max(at - 1, 0)]
}
