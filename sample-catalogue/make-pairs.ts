import type { SparseRow } from './catalogue-rows.ts'
import type { SamplePart } from './make-parts.ts'
import { listPlanted } from './planted-rows.ts'

/** Parts that are changed in pairs, by how their families begin, and why. Common practice. */
const pairs: Readonly<Record<string, string>> = {
  'damper-': 'dampers wear alike',
  'carbon-brushes-loose': 'brushes wear alike',
}

/** What is replaced together: what the awkward cases say, and every supplied part of a kind that goes in pairs. */
export function listReplacedTogether(parts: readonly SamplePart[]): SparseRow<'replaced_together.csv'>[] {
  const made = parts
    .filter(part => part.replacedBy === '')
    .flatMap(({ partNumber, family }) => {
      const kind = Object.keys(pairs).find(beginning => family.startsWith(beginning))
      if (kind === undefined) return []
      return [{ part_number: partNumber, with_part: partNumber, quantity: '2', why: pairs[kind] ?? '' }]
    })
  return [...listPlanted('replaced_together.csv'), ...made]
}
