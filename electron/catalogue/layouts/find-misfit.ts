import type { Layout } from '../../../shared-schemas/supplier-layouts.ts'
import { listRepeated, listUsedHeadings } from './check-layout.ts'

export interface Misfit {
  readonly missing: string[]
  readonly added: string[]
  readonly repeated: string[]
}

/** What keeps a file's headings from the layout; undefined where they fit, in whatever order they stand. */
export function findMisfit(layout: Layout, headings: readonly string[]): Misfit | undefined {
  const used = listUsedHeadings(layout)
  const missing = used.filter(heading => !headings.includes(heading))
  const added = [...new Set(headings.filter(heading => !layout.headings.includes(heading)))]
  const repeated = listRepeated(headings.filter(heading => used.includes(heading)))
  return missing.length + added.length + repeated.length > 0 ? { missing, added, repeated } : undefined
}
