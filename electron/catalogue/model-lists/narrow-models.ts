import type { ListedModel } from '../../../shared-schemas/model-list.ts'
import { normaliseNumber } from '../normalise-number.ts'

/** A model of a list, with the text in which words are looked for. */
export interface SearchedModel extends ListedModel {
  readonly text: string
}

/** Number, brand and type as keys, each on a line of its own, so that no word runs from one into the next. */
export function asSearched(model: ListedModel): SearchedModel {
  const { modelNumber, brand, applianceType } = model
  return { ...model, text: [modelNumber, brand, applianceType].map(normaliseNumber).join('\n') }
}

/** The models in which every word is found, in the order given. */
export function narrowModels(models: readonly SearchedModel[], words: string): readonly SearchedModel[] {
  const keys = keysOfWords(words)
  return keys.length === 0 ? models : models.filter(({ text }) => keys.every(key => text.includes(key)))
}

/** What is looked for, by the rule by which numbers are compared: `oqa-1/01` is looked for as `OQA101`. */
export function keysOfWords(words: string): string[] {
  return words
    .split(/\s+/)
    .map(normaliseNumber)
    .filter(key => key !== '')
}
