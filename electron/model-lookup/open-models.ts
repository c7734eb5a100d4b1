import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { LookupOutcome } from '../../shared-schemas/model-lookup.ts'

/** One model that a plate text leaves open. */
export interface OpenModel {
  readonly modelId: ModelId
  readonly brand: string
  readonly modelNumber: string
  /** The model number's key; positions that are asked for count over it, from 1. */
  readonly key: string
  readonly applianceType: string
}

/** What a plate text leaves open, for a question whose answer must hold for all of it. */
export interface OpenModels {
  readonly typed: string
  readonly key: string
  readonly outcome: LookupOutcome
  /**
   * Every model that agrees with the text: the one with this very key; else those that a sales name covers; else those
   * that hold the text (`?` standing for one character, confusable characters taken as alike); else, where nothing
   * agrees, the plausible near ones. In key order.
   */
  readonly models: readonly OpenModel[]
  /**
   * How the text agrees. `agrees`: as printed. `confusable`: only in characters that look alike, and no other model does.
   * `differs`: some character is not what the catalogue has, so a person must confirm before any yes.
   */
  readonly agreement: 'agrees' | 'confusable' | 'differs'
}
