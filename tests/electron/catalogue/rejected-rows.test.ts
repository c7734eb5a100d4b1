import { expect, test } from 'vitest'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import {
  firstAddedLine,
  type SmallCatalogueFile,
  smallCatalogue,
  withRows,
} from '../../builders/small-catalogue.ts'

interface Given {
  readonly file: SmallCatalogueFile
  /** Added after the sound rows of that file. */
  readonly rows: readonly string[]
}

interface Expected {
  /** Which of the added rows is rejected, from 1; the last unless it is said. */
  readonly row?: number
  readonly column: string
  readonly reason: string | RegExp
}

/** The added row is rejected for this, by its line, and every row of the sound catalogue is taken all the same. */
async function check({ file, rows }: Given, { row = rows.length, column, reason }: Expected) {
  const { rejected, files } = await openTestCatalogue().load(withRows(file, ...rows))
  expect(rejected).toMatchObject([
    { file, line: firstAddedLine(file) + row - 1, column, reason: expect.stringMatching(reason) },
  ])
  const counts = files.find(loaded => loaded.file === file)
  expect(counts).toMatchObject({
    added: smallCatalogue[file].split('\n').length - 2 + rows.length - 1,
    rejected: 1,
  })
}

const fitment = (rest: string) => `includes,drain-pump,,Ostrel,OW 4530/01,${rest}`

const cases: readonly (readonly [title: string, Given, Expected])[] = [
  [
    'a row with too few cells',
    { file: 'models.csv', rows: ['Ostrel,OW 1'] },
    { column: '', reason: /has 2 cells where the header has 9/ },
  ],
  [
    'a row with too many cells',
    { file: 'brands.csv', rows: ['Tavolme,Dovrane'] },
    { column: '', reason: /has 2 cells where the header has 1: put a cell with a comma in quotes/ },
  ],
  [
    'a brand of separators alone',
    { file: 'brands.csv', rows: ['-/-'] },
    { column: 'brand', reason: /holds no letter and no digit/ },
  ],
  [
    'a model of a brand that is not there',
    { file: 'models.csv', rows: ['Tavolme,T1,washer,,,,,,'] },
    { column: 'brand', reason: /no brand is called “Tavolme”: add it to brands.csv/ },
  ],
  [
    'a model without its number',
    { file: 'models.csv', rows: ['Ostrel,,washer,,,,,,'] },
    { column: 'model_number', reason: /is empty/ },
  ],
  [
    'a month that is none',
    { file: 'models.csv', rows: ['Ostrel,OW 9,washer,,2014-13,,,,'] },
    { column: 'made_from', reason: /“2014-13” is no date: write 2014, 2014-06/ },
  ],
  [
    'a day that its month has not',
    { file: 'models.csv', rows: ['Ostrel,OW 9,washer,,,2015-02-29,,,'] },
    { column: 'made_to', reason: /is no date/ },
  ],
  [
    'a model made until before it was first made',
    { file: 'models.csv', rows: ['Ostrel,OW 9,washer,,2014-06,2014-05,,,'] },
    { column: 'made_to', reason: /2014-05 is before 2014-06/ },
  ],
  [
    'a voltage in words',
    { file: 'models.csv', rows: ['Ostrel,OW 9,washer,,,,mains,,'] },
    { column: 'volts', reason: /“mains” is no figure in V/ },
  ],
  [
    'hertz where volts belong',
    { file: 'models.csv', rows: ['Ostrel,OW 9,washer,,,,50 Hz,,'] },
    { column: 'volts', reason: /is no figure in V/ },
  ],
  [
    'a range of volts upside down',
    { file: 'models.csv', rows: ['Ostrel,OW 9,washer,,,,240-220,,'] },
    { column: 'volts', reason: /is no figure/ },
  ],
  [
    'the same model twice with other figures',
    { file: 'models.csv', rows: ['Ostrel,OW-4530/01,washer,,,,230,,'] },
    { column: '', reason: /contradicts line 4/ },
  ],
  [
    'a sales name of a model that is not there',
    { file: 'sales_names.csv', rows: ['Ostrel,Aqualane 44,OW 9'] },
    { column: 'model_number', reason: /Ostrel has no model “OW 9”: add it to models.csv/ },
  ],
  [
    'a hazard that is none',
    { file: 'families.csv', rows: ['seal,Seal,door,washer,mains|ghosts,no'] },
    { column: 'hazards', reason: /“ghosts” is no hazard known here: write mains, stored-charge/ },
  ],
  [
    'a safety device that is perhaps one',
    { file: 'families.csv', rows: ['seal,Seal,door,washer,,maybe'] },
    { column: 'safety_device', reason: /yes or no/ },
  ],
  [
    'a rule that is none',
    { file: 'attributes.csv', rows: ['door-lock,pins,,roughly,'] },
    { column: 'rule', reason: /“roughly” is not known here: write equal or within/ },
  ],
  [
    'within, but of what',
    { file: 'attributes.csv', rows: ['door-lock,ohms,ohm,within,'] },
    { column: 'tolerance', reason: /needs one/ },
  ],
  [
    'a tolerance that no rule uses',
    { file: 'attributes.csv', rows: ['door-lock,pins,,equal,0.1'] },
    { column: 'tolerance', reason: /must be empty: “equal” has none/ },
  ],
  [
    'a part of a family that is not there',
    { file: 'parts.csv', rows: ['P9,seal,Ostrel,genuine,,,'] },
    { column: 'family', reason: /no family is called “seal”/ },
  ],
  [
    'a part neither genuine nor pattern',
    { file: 'parts.csv', rows: ['P9,door-lock,Ostrel,copy,,,'] },
    { column: 'kind', reason: /genuine or pattern/ },
  ],
  [
    'a GTIN with a wrong check digit',
    { file: 'parts.csv', rows: ['P9,door-lock,Ostrel,genuine,,2000010000004,'] },
    { column: 'gtin', reason: /check digit should be 5/ },
  ],
  [
    'a GTIN of eleven digits',
    { file: 'parts.csv', rows: ['P9,door-lock,Ostrel,genuine,,20000100000,'] },
    { column: 'gtin', reason: /8, 12, 13 or 14 digits/ },
  ],
  [
    "another part's GTIN",
    { file: 'parts.csv', rows: ['P9,door-lock,Ostrel,genuine,,2000010000005,'] },
    { column: 'gtin', reason: /is the GTIN of part 00480121 already/ },
  ],
  [
    'an attribute that the family has not',
    { file: 'parts.csv', rows: ['P9,door-lock,Ostrel,genuine,,,volts=230'] },
    { column: 'attributes', reason: /family door-lock declares no attribute “volts”/ },
  ],
  [
    'an attribute without a value',
    { file: 'parts.csv', rows: ['P9,drain-pump,Ostrel,genuine,,,volts'] },
    { column: 'attributes', reason: /“volts” is no pair: write name=value/ },
  ],
  [
    'an attribute given twice',
    { file: 'parts.csv', rows: ['P9,drain-pump,Ostrel,genuine,,,volts=230;volts=240'] },
    { column: 'attributes', reason: /gives “volts” twice/ },
  ],
  [
    'words where an attribute has a unit',
    { file: 'parts.csv', rows: ['P9,drain-pump,Ostrel,genuine,,,volts=mains'] },
    { column: 'attributes', reason: /“mains” is no volts in V/ },
  ],
  [
    "a cross reference that is another part's own number",
    { file: 'cross_references.csv', rows: ['1e5,0048-0121'] },
    { column: 'number', reason: /“1e5” is a part of its own/ },
  ],
  [
    'a cross reference to two parts',
    { file: 'cross_references.csv', rows: ['B20.6A,0048-0122'] },
    { column: '', reason: /contradicts line 2/ },
  ],
  [
    'a cross reference to no part',
    { file: 'cross_references.csv', rows: ['B1,NONE'] },
    { column: 'part_number', reason: /no part has the number “NONE”: add it to parts.csv/ },
  ],
  [
    'a model attribute that the family has not',
    { file: 'model_attributes.csv', rows: ['Ostrel,OW 4512/01,drain-pump,pins,3'] },
    { column: 'attribute', reason: /declares no attribute “pins”/ },
  ],
  [
    'a fitment of neither family nor part',
    { file: 'fitments.csv', rows: ['includes,,,Ostrel,OW 4530/01,,,,,,,List'] },
    { column: 'family', reason: /name the family or the part/ },
  ],
  [
    'a fitment of both family and part',
    { file: 'fitments.csv', rows: ['includes,drain-pump,PX 7,Ostrel,OW 4530/01,,,,,,,List'] },
    { column: 'family', reason: /both given/ },
  ],
  [
    'a fitment without its source',
    { file: 'fitments.csv', rows: [fitment(',,,,,1,')] },
    { column: 'source', reason: /is empty/ },
  ],
  [
    'a fitment that says perhaps',
    { file: 'fitments.csv', rows: ['perhaps,drain-pump,,Ostrel,OW 4530/01,,,,,,,List'] },
    { column: 'says', reason: /includes or excludes/ },
  ],
  [
    'a fitment of a model that is not there',
    { file: 'fitments.csv', rows: ['includes,drain-pump,,Brennick,OW 4530/01,,,,,,,List'] },
    { column: 'model_number', reason: /Brennick has no model “OW 4530\/01”/ },
  ],
  [
    'a wildcard that matches nothing',
    { file: 'fitments.csv', rows: ['includes,drain-pump,,Ostrel,ZZ*,,,,,,,List'] },
    { column: 'model_number', reason: /“ZZ\*” matches no model of Ostrel/ },
  ],
  [
    'a fitment made to before made from',
    { file: 'fitments.csv', rows: [fitment('2015,2014-12,,,,1,List')] },
    { column: 'made_to', reason: /2014-12 is before 2015/ },
  ],
  [
    'serials of digits upside down, though longer sorts first',
    { file: 'fitments.csv', rows: [fitment(',,1000,999,,1,List')] },
    { column: 'serial_to', reason: /999 is before 1000/ },
  ],
  [
    'serials of two forms, between which nothing is for certain',
    { file: 'fitments.csv', rows: [fitment(',,A100,2000,,1,List')] },
    { column: 'serial_to', reason: /2000 is not of the form of A100/ },
  ],
  [
    'a date of no century that an appliance is from',
    { file: 'models.csv', rows: ['Ostrel,OW 1,,,0214-05,,,,'] },
    { column: 'made_from', reason: /“0214-05” is no date/ },
  ],
  [
    'a number with a line break in it',
    { file: 'models.csv', rows: ['Ostrel,"OW 1\n2",,,,,,,'] },
    { column: 'model_number', reason: /line break.*write it on one line/ },
  ],
  [
    'a text with a character that nobody can see',
    { file: 'parts.csv', rows: ['N1,drain-pump,,genuine,a\u0000b,,'] },
    { column: 'description', reason: /control character/ },
  ],
  [
    'a value in a unit that measures something else',
    { file: 'parts.csv', rows: ['N1,drain-pump,,genuine,,,volts=12 nF'] },
    { column: 'attributes', reason: /“12 nF” is no volts in V/ },
  ],
  [
    'a rating in a unit that measures something else',
    { file: 'models.csv', rows: ['Ostrel,OW 1,,,,,230 Hz,,'] },
    { column: 'volts', reason: /“230 Hz” is no figure in V/ },
  ],
  [
    'a part number with a slip in it, with those that begin as it does,',
    { file: 'cross_references.csv', rows: ['B1,0048-0129'] },
    {
      column: 'part_number',
      reason: /mend the number \(nearest: 0048-0121, 0048-0122, 0048-0123\)$/,
    },
  ],
  [
    'a model number with a slip in it, with those of its brand that begin as it does,',
    { file: 'sales_names.csv', rows: ['Ostrel,Aqualane 44,OW 4512/11'] },
    { column: 'model_number', reason: /mend the number \(nearest: OW 4512\/01, OW 4512\/02\)$/ },
  ],
  [
    'a quantity of none',
    { file: 'fitments.csv', rows: [fitment(',,,,,0,List')] },
    { column: 'quantity', reason: /1 or more/ },
  ],
  [
    'a quantity in words',
    { file: 'fitments.csv', rows: [fitment(',,,,,two,List')] },
    { column: 'quantity', reason: /“two” is no whole number/ },
  ],
  [
    'one source that includes and excludes',
    { file: 'fitments.csv', rows: ['excludes,drain-pump,,Ostrel,OW4512/01,,,,,,,Ostrel parts list'] },
    {
      column: 'says',
      reason:
        /contradicts line 2: Ostrel parts list both includes and excludes drain-pump for Ostrel OW4512\/01/,
    },
  ],
  [
    'one source that excludes what its wildcard includes',
    { file: 'fitments.csv', rows: ['excludes,drain-pump,,Ostrel,OW4530/01,,,,,,,Dealer list'] },
    { column: 'says', reason: /contradicts line 4: Dealer list both includes and excludes/ },
  ],
  [
    'one source with two quantities',
    { file: 'fitments.csv', rows: ['includes,drain-pump,,Ostrel,OW 4512/01,,,,,,2,Ostrel parts list'] },
    { column: '', reason: /contradicts line 2/ },
  ],
  [
    'a part that replaces itself',
    { file: 'supersessions.csv', rows: ['PX 7,PX-7,one,,,'] },
    { column: 'new_part', reason: /is PX 7 itself/ },
  ],
  [
    'a successor that is not there',
    { file: 'supersessions.csv', rows: ['PX 7,PX 8,one,,,'] },
    { column: 'new_part', reason: /no part has the number “PX 8”/ },
  ],
  [
    'a successor that also needs itself',
    { file: 'supersessions.csv', rows: ['PX 7,1E5,one,,,1E5'] },
    { column: 'also_needs', reason: /names the old or the new part/ },
  ],
  [
    'a successor that also needs what is not there',
    { file: 'supersessions.csv', rows: ['PX 7,1E5,one,,,LEAD'] },
    { column: 'also_needs', reason: /no part has the number “LEAD”/ },
  ],
  [
    'a kit that nobody knows',
    { file: 'kits.csv', rows: ['KIT 9,1E5,1'] },
    { column: 'kit', reason: /no part has the number “KIT 9”: add it to parts.csv/ },
  ],
  [
    'a part in a kit that nobody knows',
    { file: 'kits.csv', rows: ['1E5,LEAD,1'] },
    { column: 'part_number', reason: /no part has the number “LEAD”/ },
  ],
  [
    'a kit in itself',
    { file: 'kits.csv', rows: ['1E5,1-E5,1'] },
    { column: 'part_number', reason: /is the kit 1E5 itself: name a part that comes in it/ },
  ],
  [
    'a kit with half a part',
    { file: 'kits.csv', rows: ['1E5,PX 7,0.5'] },
    { column: 'quantity', reason: /“0.5” is no whole number/ },
  ],
  [
    'a kit with none of a part',
    { file: 'kits.csv', rows: ['1E5,PX 7,0'] },
    { column: 'quantity', reason: /must be 1 or more/ },
  ],
  [
    'a companion that nobody knows',
    { file: 'replaced_together.csv', rows: ['1E5,LEAD,1,'] },
    { column: 'with_part', reason: /no part has the number “LEAD”/ },
  ],
  [
    'a pair of one',
    { file: 'replaced_together.csv', rows: ['1E5,1E5,1,'] },
    { column: 'quantity', reason: /must be 2 or more where 1E5 goes with itself/ },
  ],
  [
    'a companion without its number of pieces',
    { file: 'replaced_together.csv', rows: ['1E5,PX 7,,'] },
    { column: 'quantity', reason: /“” is no whole number/ },
  ],
  [
    'a replacement one way and both ways on the same terms',
    { file: 'supersessions.csv', rows: ['0048-0121,0048-0122,both,,,PX 7'] },
    { column: '', reason: /contradicts line 2/ },
  ],
  [
    'a date code that is no pattern',
    { file: 'date_codes.csv', rows: ['Ostrel,(?<year>,year=2-digit'] },
    { column: 'pattern', reason: /is no pattern/ },
  ],
  [
    'a date code that does not tell the year',
    { file: 'date_codes.csv', rows: ['Ostrel,^(?<week>\\d\\d),week=2-digit'] },
    { column: 'pattern', reason: /names no group for the year/ },
  ],
  [
    'a date code that explains a week which is not marked',
    { file: 'date_codes.csv', rows: ['Ostrel,^(?<year>\\d\\d)W,year=2-digit;week=2-digit'] },
    { column: 'means', reason: /explains week/ },
  ],
  [
    'a date code that is explained in words of its own',
    { file: 'date_codes.csv', rows: ['Ostrel,^(?<year>\\d\\d)X,year=two figures'] },
    { column: 'means', reason: /cannot be read: write year=2-digit/ },
  ],
  [
    'a date code with a group that no date has',
    { file: 'date_codes.csv', rows: ['Ostrel,^(?<year>\\d\\d)(?<plant>\\d),year=2-digit'] },
    { column: 'means', reason: /marks “plant”/ },
  ],
  [
    'a date code that names no group',
    { file: 'date_codes.csv', rows: ['Ostrel,^\\d+$,year=2-digit'] },
    { column: 'pattern', reason: /names no group/ },
  ],
  [
    'a currency in small letters',
    { file: 'suppliers.csv', rows: ['OTHER,Other,gbp,,,,'] },
    { column: 'currency', reason: /three capital letters/ },
  ],
  [
    'a minimum with a currency sign',
    { file: 'suppliers.csv', rows: ['OTHER,Other,GBP,£25,,,'] },
    { column: 'minimum_order', reason: /write digits with a point/ },
  ],
  [
    'a price with a comma',
    { file: 'offers.csv', rows: ['DEALER,1E5,,"12,50",,,'] },
    { column: 'price', reason: /“12,50” is no amount/ },
  ],
  [
    'a price of nothing',
    { file: 'offers.csv', rows: ['DEALER,1E5,,0.00,,,'] },
    { column: 'price', reason: /above 0/ },
  ],
  [
    'a pack of none',
    { file: 'offers.csv', rows: ['DEALER,1E5,,1.00,1,0,1'] },
    { column: 'pack', reason: /1 or more/ },
  ],
  [
    'an offer of a supplier that is not there',
    { file: 'offers.csv', rows: ['OTHER,1E5,,1.00,1,1,1'] },
    { column: 'supplier', reason: /no supplier is called “OTHER”/ },
  ],
  [
    'a place of no known kind',
    { file: 'locations.csv', rows: ['loft,attic,Loft'] },
    { column: 'kind', reason: /shop or van or quarantine/ },
  ],
  [
    'stock below none',
    { file: 'opening_stock.csv', rows: ['shop,1E5,-1,'] },
    { column: 'quantity', reason: /no whole number/ },
  ],
  [
    'stock in a place that is not there',
    { file: 'opening_stock.csv', rows: ['loft,1E5,1,'] },
    { column: 'location', reason: /no location is called “loft”/ },
  ],
  [
    'use on a month instead of a day',
    { file: 'usage.csv', rows: ['2026-01,shop,1E5,1,'] },
    { column: 'date', reason: /no day: write it as 2014-06-17/ },
  ],
  [
    'use of nothing',
    { file: 'usage.csv', rows: ['2026-01-07,shop,1E5,0,'] },
    { column: 'quantity', reason: /whole number/ },
  ],
  [
    'a van list of the shop',
    { file: 'van_lists.csv', rows: ['shop,,1E5,1'] },
    { column: 'van', reason: /“shop” is no van/ },
  ],
  [
    'a van list of neither family nor part',
    { file: 'van_lists.csv', rows: ['van-1,,,1'] },
    { column: 'family', reason: /name the family or the part/ },
  ],
  [
    'a job of a model without its brand',
    { file: 'jobs.csv', rows: ['J9,2026-01-06,,,4821-07,,,'] },
    { column: 'brand', reason: /needs its brand/ },
  ],
  [
    'a job that needs a family that is not there',
    { file: 'jobs.csv', rows: ['J9,2026-01-06,,,,,seal,'] },
    { column: 'families_needed', reason: /no family is called “seal”/ },
  ],
  [
    'a quote that is never closed',
    { file: 'locations.csv', rows: ['loft,shop,"Loft'] },
    { column: '', reason: /opens a quote that is never closed/ },
  ],
]

test.each(cases)('%s is rejected by its line', (_title, given, expected) => check(given, expected))
