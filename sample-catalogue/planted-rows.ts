import { awkwardCases } from './awkward-cases.ts'
import type { CatalogueFile, SparseRow } from './catalogue-rows.ts'

/** What the awkward cases put into one file. */
export function listPlanted<File extends CatalogueFile>(file: File): SparseRow<File>[] {
  return awkwardCases.flatMap(({ plants }) => {
    const rows: readonly SparseRow<File>[] = plants[file] ?? []
    return [...rows]
  })
}
