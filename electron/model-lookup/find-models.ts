import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { FoundModels, ModelCandidate } from '../../shared-schemas/model-lookup.ts'
import { orRefuse } from '../requests/refusal.ts'
import { dearestSlip } from './align-keys.ts'
import type { CandidateFacts } from './candidate-queries.ts'
import { explainDifferences } from './explain-differences.ts'
import { wholeEdit } from './fold-characters.ts'
import { type ModelIndex, modelAt } from './index-models.ts'
import { layeredKeyAt, layeredSegmentsAt } from './layered-keys.ts'
import { type RankedModel, rankModels, rankOpenModels } from './rank-models.ts'
import { type PlateQuestion, type SettledText, settlePlateText } from './settle-plate-text.ts'

export interface LookUp {
  readonly index: ModelIndex
  readonly readFacts: (modelId: ModelId) => CandidateFacts
}

/**
 * The models that a plate text may mean: first those that it leaves open, likeliest first, then others that it is not
 * far from, in case it was misread. `openModels` says how many are of the first kind. Equals stand in key order.
 */
export function findModels(
  { index, readFacts }: LookUp,
  { top, ...question }: PlateQuestion & { readonly top: number },
): FoundModels {
  const settled = orRefuse(settlePlateText(index, question, { mostNearest: top }))
  const ranked = rankCandidates(index, settled, top).slice(0, top)
  let least = 1
  return {
    typed: question.text,
    key: settled.reading.key,
    outcome: settled.outcome,
    openModels: settled.positions.length,
    setAside: [...settled.reading.setAside],
    candidates: ranked.map(model => {
      const { modelId, ...candidate } = describeCandidate(index, settled.reading.key, model)
      // The open ones come first even where another is nearer by its letters; the score then says no more than the order.
      least = Math.min(least, candidate.score)
      return { modelId, ...candidate, ...readFacts(modelId), score: least }
    }),
  }
}

/** A text that some model agrees with may still be a slip away from another. */
function rankCandidates(index: ModelIndex, settled: SettledText, top: number): readonly RankedModel[] {
  const { reading, positions, agreement, nearest, admits } = settled
  if (agreement === 'differs') return nearest
  const open = rankOpenModels(index, { ...settled, key: reading.key }, top)
  if (positions.length >= top) return open
  const isOpen = new Set(positions)
  const near = { wanted: top, margin: 0, dearest: dearestSlip, isThorough: false }
  const others = rankModels(index, reading, admits, near)
  return [...open, ...others.filter(({ position }) => !isOpen.has(position))]
}

function describeCandidate(
  index: ModelIndex,
  text: string,
  { position, cost, namePosition }: RankedModel,
): Omit<ModelCandidate, keyof CandidateFacts> {
  const { alphabet } = index.numbers
  const model = modelAt(index, position)
  const differences =
    namePosition === undefined
      ? { alphabet, text, key: model.key, marks: layeredSegmentsAt(index.numbers, position) }
      : {
          alphabet,
          text,
          key: layeredKeyAt(index.salesNames, namePosition),
          marks: layeredSegmentsAt(index.salesNames, namePosition),
        }
  return {
    ...model,
    score: scoreOf(cost, text, model.key === text),
    matched: namePosition === undefined ? 'model-number' : 'sales-name',
    differences: explainDifferences(differences),
  }
}

/** What is left of the text after its misreading is paid for; 1 is kept for the very key. */
function scoreOf(cost: number, text: string, isVeryKey: boolean): number {
  if (isVeryKey) return 1
  const left = 1 - cost / (wholeEdit * text.length)
  return Math.round(Math.min(bestOfOthers, Math.max(0, left)) * 1000) / 1000
}

const bestOfOthers = 0.99
