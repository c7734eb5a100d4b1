import type { FittingFamily } from '../../shared-schemas/fit-check.ts'
import type { FoundModels, ModelCandidate } from '../../shared-schemas/model-lookup.ts'

/** What the look-up came to, in one sentence for the screen. */
export function wordOutcome(
  { outcome, openModels, candidates }: Pick<FoundModels, 'outcome' | 'openModels' | 'candidates'>,
  taken: ModelCandidate | null,
): string {
  const [best] = candidates
  if (taken !== null) return `Taken as ${nameModel(taken)}.`
  if (best === undefined) return 'No model in the catalogue agrees with this.'
  switch (outcome) {
    case 'exact':
      return `${nameModel(best)}, ${best.applianceType}.`
    case 'near':
      return `No model has exactly this number. Nearest: ${nameModel(best)}.`
    case 'several':
      return `${figure.format(openModels)} models agree with what was read.`
    case 'none':
      return 'No model in the catalogue agrees with this. Nearest below.'
  }
}

/** Under the number, when no reading would change any answer. */
export function wordNothingAsked(
  { outcome, openModels }: Pick<FoundModels, 'outcome' | 'openModels'>,
  taken: ModelCandidate | null,
): string {
  if (taken !== null) return `Taken as ${taken.modelNumber}. Nothing more need be read.`
  if (outcome === 'exact') return 'This number is in the catalogue. Nothing more need be read.'
  return openModels > 1 ? 'Nothing more need be read: the answers are the same for every open model.' : ''
}

/** How the families divide, in one sentence. */
export function wordFamilies(families: readonly FittingFamily[], openModels: number): string {
  const fitting = families.filter(
    ({ verdict }) => verdict === 'fits' || verdict === 'fits-with-changes',
  ).length
  const asking = families.filter(({ verdict }) => verdict === 'ask').length
  const whichever = openModels > 1 ? ', whichever model it is' : ''
  const asks = asking > 0 ? ` ${asking} ${asking === 1 ? 'waits' : 'wait'} for a reading.` : ''
  return `${fitting} of ${families.length} part families fit${whichever}.${asks}`
}

export function nameModel({ brand, modelNumber }: Pick<ModelCandidate, 'brand' | 'modelNumber'>): string {
  return `${brand} ${modelNumber}`
}

const figure = new Intl.NumberFormat('en')
