import { type Decided, orRefuse } from '../requests/refusal.ts'
import { type ModelIndex, modelAt } from './index-models.ts'
import type { OpenModels } from './open-models.ts'
import { settlePlateText } from './settle-plate-text.ts'

/**
 * Every model that a plate text leaves open, for a question whose answer must hold for all of it. Never cut short,
 * however many; why that makes it safe to answer from stands at `settlePlateText`.
 */
export function findOpenModels(index: ModelIndex, question: PlateText): OpenModels {
  return orRefuse(decideOpenModels(index, question))
}

interface PlateText {
  readonly text: string
  readonly brand?: string | undefined
}

/** The same, with what forbids it as a value: one line of many that cannot be looked up leaves the others standing. */
export function decideOpenModels(index: ModelIndex, question: PlateText): Decided<OpenModels> {
  const settled = settlePlateText(index, question)
  if (!settled.ok) return settled
  const { reading, outcome, agreement, positions } = settled.value
  return {
    ok: true,
    value: {
      typed: question.text,
      key: reading.key,
      outcome,
      models: positions.map(position => modelAt(index, position)),
      agreement,
    },
  }
}
