import { orRefuse } from '../requests/refusal.ts'
import { type ModelIndex, modelAt } from './index-models.ts'
import type { OpenModels } from './open-models.ts'
import { settlePlateText } from './settle-plate-text.ts'

/**
 * Every model that a plate text leaves open, for a question whose answer must hold for all of it. Never cut short,
 * however many; why that makes it safe to answer from stands at `settlePlateText`.
 */
export function findOpenModels(
  index: ModelIndex,
  question: { readonly text: string; readonly brand?: string | undefined },
): OpenModels {
  const settled = orRefuse(settlePlateText(index, question))
  return {
    typed: question.text,
    key: settled.reading.key,
    outcome: settled.outcome,
    models: settled.positions.map(position => modelAt(index, position)),
    agreement: settled.agreement,
  }
}
