import type { Shape } from '../../../shared-schemas/supplier-layouts.ts'

export interface Sampled {
  readonly heading: string
  readonly samples: readonly string[]
}

const wideColumn = 'model_number'
const modelSeparators = ['\n', ';', '|', ','] as const

/**
 * Whether the rows of a list of fitments name many models each: in the cell under the heading that holds models, or
 * under several headings that differ in their number alone (`Model 1`, `Model 2`).
 */
export function guessShape(columns: readonly Sampled[], modelHeading: string | null): Shape {
  const numbered = findNumbered(columns.map(({ heading }) => heading))
  if (numbered !== undefined) return { kind: 'wide-columns', column: wideColumn, headings: numbered }
  const models = columns.find(({ heading }) => heading === modelHeading)
  const separators = modelSeparators.filter(separator =>
    models?.samples.some(sample => partsOften(sample, separator)),
  )
  if (models === undefined || separators.length === 0) return { kind: 'long' }
  return { kind: 'wide-cell', column: wideColumn, heading: models.heading, separators: [...separators] }
}

function partsOften(sample: string, separator: string): boolean {
  return sample.split(separator).filter(piece => piece.trim() !== '').length > 1
}

function findNumbered(headings: readonly string[]): string[] | undefined {
  const groups = Map.groupBy(
    headings.filter(heading => /\D\s*\d{1,3}$/.test(heading) && /mod[eè]l|ger[aä]t|typ/i.test(heading)),
    heading => heading.replace(/\s*\d{1,3}$/, ''),
  )
  return [...groups.values()].find(group => group.length > 1)
}
