import { expect, test } from 'vitest'
import { listSources, productFolders } from './source-files.ts'

/** Text that nobody guarded runs as a formula in somebody's spreadsheet: so there is one place that writes CSV. */
test('CSV is written in shared-schemas/csv-text.ts and nowhere else', () => {
  const writers = listSources(productFolders.filter(folder => folder !== 'sample-catalogue'))
    .filter(({ text }) => writesCsv(text))
    .map(({ file }) => file)
  expect(writers).toEqual(['shared-schemas/csv-text.ts'])
})

test('the search knows a writer when it sees one', () => {
  expect(writesCsv(`cell.replaceAll('"', '""')`)).toBe(true)
  expect(writesCsv(`cell.replace(/"/g, '""')`)).toBe(true)
  expect(writesCsv('Papa.unparse(rows)')).toBe(true)
  expect(writesCsv(`cell.replaceAll('""', '"')`)).toBe(false)
})

function writesCsv(text: string): boolean {
  return /\.unparse\(|\.replace(?:All)?\(\s*(?:'"'|"\\""|\/"\/g)\s*,\s*(?:'""'|"\\"\\"")/.test(text)
}
