import { expect, test } from 'vitest'
import { catalogueFiles } from '../../../../electron/catalogue/files/all-files.ts'
import { kindOfColumn } from '../../../../electron/catalogue/layouts/column-kinds.ts'
import { headingWords } from '../../../../electron/catalogue/layouts/heading-words.ts'
import { matchHeadings } from '../../../../electron/catalogue/layouts/match-headings.ts'
import { openTestCatalogue } from '../../../builders/open-test-catalogue.ts'
import { type SmallCatalogueFile, withRows } from '../../../builders/small-catalogue.ts'

const allColumns = new Set(catalogueFiles.flatMap(({ columns }) => columns))

test('words are known for columns of ours and no others', () =>
  expect(Object.keys(headingWords).filter(column => !allColumns.has(column))).toEqual([]))

test('every column that begins with made_ or ends in a day holds a date', () => {
  for (const { name, columns } of catalogueFiles)
    for (const column of columns)
      if (/^made_|^date$/.test(column)) expect(kindOfColumn(name, column)).toEqual({ holds: 'date' })
})

/** The loader's own reason says which words it takes. */
test.each<[SmallCatalogueFile, string, string]>([
  ['parts.csv', 'kind', 'P9,drain-pump,Ostrel,copy,,,'],
  ['locations.csv', 'kind', 'attic,loft,Attic'],
  ['fitments.csv', 'says', 'perhaps,drain-pump,,Ostrel,OW 4530/01,,,,,,,List'],
  ['supersessions.csv', 'way', 'PX 7,1E5,round,,,'],
  ['attributes.csv', 'rule', 'door-lock,pins,,roughly,'],
  ['families.csv', 'safety_device', 'seal,Seal,door,washer,,maybe'],
])('the words of %s, %s, are those that the loader takes', async (file, column, row) => {
  const kind = kindOfColumn(file, column)
  const { rejected } = await openTestCatalogue().load(withRows(file, row))
  expect(rejected).toMatchObject([{ column }])
  expect(rejected[0]?.reason.replace(/.*: write /, '').split(' or ')).toEqual(
    kind.holds === 'words' ? kind.takes : undefined,
  )
})

test('a heading is proposed for one column, the one called as ours first', () => {
  const matched = matchHeadings(['maker', 'brand'], ['Hersteller', 'Brand'])
  expect(matched.map(({ column, heading }) => [column, heading])).toEqual([
    ['maker', 'Hersteller'],
    ['brand', 'Brand'],
  ])
})

test('where several headings may be meant, that is said', () =>
  expect(matchHeadings(['part_number'], ['Artikel', 'Bestellnummer'])).toMatchObject([
    { heading: 'Artikel', certainty: 'open', why: 'it may be “Artikel” or “Bestellnummer”' },
  ]))
