import { expect, test } from 'vitest'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import { firstAddedLine, type SmallCatalogueFile, withRows } from '../../builders/small-catalogue.ts'

/** The added row is rejected for this cell, and this is proposed for it. */
async function check(file: SmallCatalogueFile, row: string, column: string, mend: string | null) {
  const { rejected } = await openTestCatalogue().load(withRows(file, row))
  expect(rejected).toMatchObject([{ file, line: firstAddedLine(file), column, mend }])
}

test.each<[string, SmallCatalogueFile, string, string, string | null]>([
  ['a month in another form', 'models.csv', 'Ostrel,OW 9,washer,,2014/6,,,,', 'made_from', '2014-06'],
  [
    'a day that has one order only',
    'models.csv',
    'Ostrel,OW 9,washer,,17.06.2014,,,,',
    'made_from',
    '2014-06-17',
  ],
  ['a day that has two orders', 'models.csv', 'Ostrel,OW 9,washer,,06.07.2014,,,,', 'made_from', null],
  ['a year of two figures', 'models.csv', 'Ostrel,OW 9,washer,,06/99,,,,', 'made_from', '1999-06'],
  ['a brand with a letter too many', 'models.csv', 'Ostrell,OW 9,washer,,,,,,', 'brand', 'Ostrel'],
  ['a brand that is like none', 'models.csv', 'Tavolme,OW 9,washer,,,,,,', 'brand', null],
  ['a family with a letter too few', 'parts.csv', 'P9,drain-pmp,Ostrel,genuine,,,', 'family', 'drain-pump'],
  ['a word with a slip', 'parts.csv', 'P9,drain-pump,Ostrel,Genuin,,,', 'kind', 'genuine'],
  ['a word that is none of ours', 'parts.csv', 'P9,drain-pump,Ostrel,copy,,,', 'kind', null],
  [
    'a letter O for a nought in a part number',
    'offers.csv',
    'DEALER,0048-O121,,1.00,1,1,1',
    'part_number',
    '0048-0121',
  ],
  ['a number that looks like no part', 'offers.csv', 'DEALER,9948-0121,,1.00,1,1,1', 'part_number', null],
  [
    'a letter O for a nought in a model number',
    'sales_names.csv',
    'Ostrel,Aqualane,OW 4512/O1',
    'model_number',
    'OW 4512/01',
  ],
  ['a decimal comma', 'offers.csv', 'DEALER,PX 7,,"12,50",1,1,1', 'price', '12.50'],
  ['a comma that may part thousands', 'offers.csv', 'DEALER,PX 7,,"1,250",1,1,1', 'price', null],
  ['a currency beside the price', 'offers.csv', 'DEALER,PX 7,,£12.50,1,1,1', 'price', '12.50'],
  ['a letter O in a quantity', 'offers.csv', 'DEALER,PX 7,,12.50,1O,1,1', 'from_quantity', '10'],
  ['a blank that nobody sees', 'models.csv', 'Ostrel,"OW\u000b9",washer,,,,,,', 'model_number', 'OW 9'],
])('%s', (_title, file, row, column, mend) => check(file, row, column, mend))
