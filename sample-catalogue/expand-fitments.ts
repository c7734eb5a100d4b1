import { type Catalogue, numberKey, type Row } from './catalogue-rows.ts'
import { hasWildcard, matchesModelPattern } from './match-model-pattern.ts'

/** A fitment row and one model it speaks of, as `brand`, a tab, and the model number. */
export type ExpandedFitment = { readonly row: Row<'fitments.csv'>; readonly model: string }

/** Every fitment row for every model that it means. */
export function expandFitments(catalogue: Catalogue): ExpandedFitment[] {
  const models = Map.groupBy(catalogue['models.csv'], row => row.brand)
  const known = new Set(catalogue['models.csv'].map(row => `${row.brand}\t${row.model_number}`))
  return catalogue['fitments.csv'].flatMap(row => {
    const exact = `${row.brand}\t${row.model_number}`
    if (!hasWildcard(row.model_number)) return known.has(exact) ? [{ row, model: exact }] : []
    return (models.get(row.brand) ?? [])
      .filter(model => isMeant(row.model_number, model.model_number))
      .map(model => ({ row, model: `${row.brand}\t${model.model_number}` }))
  })
}

/** With and without separators the pattern must mean the same models: loaders may compare either way. */
function isMeant(pattern: string, modelNumber: string): boolean {
  const asPrinted = matchesModelPattern(pattern, modelNumber)
  const asKey = matchesModelPattern(pattern.replace(/[^\p{L}\p{N}*?]/gu, ''), numberKey(modelNumber))
  if (asPrinted !== asKey)
    throw new Error(`${pattern} means ${modelNumber} only with or only without separators`)
  return asPrinted
}
