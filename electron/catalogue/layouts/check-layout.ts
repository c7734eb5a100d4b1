import type { Layout } from '../../../shared-schemas/supplier-layouts.ts'
import { catalogueFiles } from '../files/all-files.ts'
import { listWideHeadings } from './layout-queries.ts'

/** Everything that keeps a layout from being used, in words; empty where nothing does. */
export function listLayoutFaults(layout: Layout): string[] {
  const file = catalogueFiles.find(({ name }) => name === layout.feeds)
  if (file === undefined) {
    const known = catalogueFiles.map(({ name }) => name).join(', ')
    return [`${layout.feeds} is no catalogue file, choose one of ${known}`]
  }
  const { columns, shape, headings } = layout
  const filled = [...columns.map(({ column }) => column), ...(shape.kind === 'long' ? [] : [shape.column])]
  const used = listUsedHeadings(layout)
  return [
    ...filled
      .filter(column => !file.columns.includes(column))
      .map(column => `${file.name} has no column ${column}`),
    ...listRepeated(filled).map(column => `${column} is filled twice`),
    ...file.neededColumns
      .filter(column => !filled.includes(column))
      .map(column => `nothing fills ${column}, without which no row of ${file.name} means anything`),
    ...used
      .filter(heading => !headings.includes(heading))
      .map(heading => `the file has no heading “${heading}”`),
    ...listRepeated(headings.filter(heading => used.includes(heading))).map(
      heading => `the heading “${heading}” comes more than once, so that it cannot be matched`,
    ),
    ...columns
      .filter(({ constant, decimalSign, dateOrder }) => constant !== null && (decimalSign ?? dateOrder))
      .map(
        ({ column }) => `${column} is the same in every row, so it has no decimal sign or order of its own`,
      ),
  ]
}

/** The headings whose columns are read. */
export function listUsedHeadings({ columns, shape }: Layout): string[] {
  const matched = columns.flatMap(({ heading }) => (heading === null ? [] : [heading]))
  return [...new Set([...matched, ...listWideHeadings(shape)])]
}

export function listRepeated(words: readonly string[]): string[] {
  return [...new Set(words.filter((word, at) => words.indexOf(word) !== at))]
}
