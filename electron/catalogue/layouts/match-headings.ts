import type { Certainty } from '../../../shared-schemas/supplier-layouts.ts'
import { foldHeading, headingWords } from './heading-words.ts'

export interface HeadingMatch {
  readonly column: string
  readonly heading: string | null
  readonly certainty: Certainty
  readonly why: string
}

/**
 * For each column of ours the heading that probably stands over it, each heading at most once: those called as ours
 * first, then those that a known word stands for. `likely` where one heading is left for it, `open` where several are.
 */
export function matchHeadings(columns: readonly string[], headings: readonly string[]): HeadingMatch[] {
  const taken = new Set<string>()
  const exact = new Map<string, string>()
  for (const column of columns) {
    const heading = headings.find(each => !taken.has(each) && foldHeading(each) === foldHeading(column))
    if (heading === undefined) continue
    exact.set(column, heading)
    taken.add(heading)
  }
  return columns.map(column => {
    const called = exact.get(column)
    if (called !== undefined)
      return { column, heading: called, certainty: 'certain', why: 'it is called as ours' }
    const words = new Set((headingWords[column] ?? []).map(foldHeading))
    const known = headings.filter(heading => !taken.has(heading) && words.has(foldHeading(heading)))
    const [heading] = known
    if (heading === undefined)
      return { column, heading: null, certainty: 'open', why: 'no heading is known for it' }
    taken.add(heading)
    return known.length === 1
      ? { column, heading, certainty: 'likely', why: `lists call it “${heading}”` }
      : {
          column,
          heading,
          certainty: 'open',
          why: `it may be ${known.map(each => `“${each}”`).join(' or ')}`,
        }
  })
}
