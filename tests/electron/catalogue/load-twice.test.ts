import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dumpOf } from '../../builders/dump-database.ts'
import { openTestCatalogue, type TestCatalogue } from '../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'
import { unpackFitments } from '../../builders/unpack-fitments.ts'

const header = (file: keyof typeof smallCatalogue) => smallCatalogue[file].split('\n')[0] ?? ''

/** Numbers of which many have one key, so that rows meet. */
const number = fc.stringMatching(/^[AB][-. ]?[1-3]\/?[0-2]$/)
const listed = fc.oneof(number, fc.constantFrom('A*', '*', '?1?', 'B-?*', 'C*'))
const date = fc.constantFrom('', '2012', '2012-06', '2013-01-15', '2014-13')
const brand = fc.constantFrom('Ostrel', 'Brennick', 'Tavolme')

const modelRow = fc.tuple(
  brand,
  number,
  fc.constantFrom('washer', 'dryer', ''),
  date,
  date,
  fc.constantFrom('230', '220-240', '', 'x'),
)
const partRow = fc.tuple(
  number,
  fc.constantFrom('pump', 'lock', 'seal'),
  fc.constantFrom('genuine', 'pattern'),
  fc.constantFrom('', 'volts=230', 'volts=220..240;pins=3', 'pins=2'),
)
const fitmentRow = fc.tuple(
  fc.constantFrom('includes', 'excludes'),
  fc.constantFrom('pump', 'lock', ''),
  fc.oneof(fc.constant(''), number),
  brand,
  listed,
  date,
  fc.constantFrom('', '1', '2'),
  fc.constantFrom('list', 'notes'),
)
const replacementRow = fc.tuple(
  number,
  number,
  fc.constantFrom('one', 'both'),
  fc.oneof(fc.constant(''), number),
)
const companyRow = fc.tuple(number, number, fc.nat({ max: 3 }))
const stockRow = fc.tuple(fc.constantFrom('shop', 'van-1'), number, fc.nat({ max: 5 }))
const usageRow = fc.tuple(
  fc.constantFrom('2026-01-05', '2026-01-06'),
  number,
  fc.integer({ min: -1, max: 3 }),
)

const catalogue = fc.record({
  models: fc.array(modelRow, { maxLength: 12 }),
  parts: fc.array(partRow, { maxLength: 12 }),
  fitments: fc.array(fitmentRow, { maxLength: 20 }),
  replacements: fc.array(replacementRow, { maxLength: 10 }),
  kits: fc.array(companyRow, { maxLength: 12 }),
  together: fc.array(companyRow, { maxLength: 8 }),
  stock: fc.array(stockRow, { maxLength: 8 }),
  usage: fc.array(usageRow, { maxLength: 8 }),
})

type Given = typeof catalogue extends fc.Arbitrary<infer Value> ? Value : never

function writeFiles(given: Given): Record<string, string> {
  const lines = (columns: string, rows: readonly (readonly (string | number)[])[]) =>
    `${[columns, ...rows.map(row => row.join(','))].join('\n')}\n`
  return {
    'brands.csv': 'brand\nOstrel\nBrennick\n',
    'models.csv': lines('brand,model_number,appliance_type,made_from,made_to,volts', given.models),
    'families.csv': `${header('families.csv')}\npump,Pump,,,,no\nlock,Lock,,,,yes\n`,
    'attributes.csv': `${header('attributes.csv')}\npump,volts,V,covers,\npump,pins,,equal,\nlock,pins,,equal,\n`,
    'parts.csv': lines('part_number,family,kind,attributes', given.parts),
    'fitments.csv': lines(
      'says,family,part_number,brand,model_number,made_from,quantity,source',
      given.fitments,
    ),
    'supersessions.csv': lines('old_part,new_part,way,also_needs', given.replacements),
    'kits.csv': lines('kit,part_number,quantity', given.kits),
    'replaced_together.csv': lines('part_number,with_part,quantity', given.together),
    'locations.csv': 'location,kind\nshop,shop\nvan-1,van\n',
    'opening_stock.csv': lines('location,part_number,quantity', given.stock),
    'usage.csv': lines(
      'date,part_number,quantity,location',
      given.usage.map(row => [...row, 'shop']),
    ),
  }
}

test('whatever is loaded: a second time changes nothing, every row is accounted for, and the shop is sound', async () => {
  await fc.assert(
    fc.asyncProperty(catalogue, async given => {
      const files = writeFiles(given)
      const { database, load } = openTestCatalogue()
      const first = await load(files)
      for (const { file, ...counts } of first.files) {
        const rows = (files[file] ?? '').trimEnd().split('\n').length - 1
        expect(counts.added + counts.changed + counts.unchanged + counts.rejected, file).toBe(rows)
        expect(counts.changed, file).toBe(0)
      }
      const before = dumpOf(database)
      const second = await load(files)
      expect(second.rejected).toEqual(first.rejected)
      for (const { file, added, changed } of second.files)
        expect({ file, added, changed }).toEqual({ file, added: 0, changed: 0 })
      expect(dumpOf(database)).toEqual(before)
      expect(listContradictions(database)).toEqual([])
      expect(listKitsInThemselves(database)).toEqual([])
      expect([...database.tuples('PRAGMA foreign_key_check')]).toEqual([])
      database.close()
    }),
    { numRuns: 50 },
  )
}, 60_000)

/** Kits that come in themselves, perhaps through others. */
function listKitsInThemselves(database: TestCatalogue['database']): unknown[] {
  return [
    ...database.tuples(
      `WITH RECURSIVE inside(kit, part) AS (
         SELECT kit_part_id, part_id FROM kit_content
         UNION SELECT kit, part_id FROM inside JOIN kit_content ON kit_part_id = part)
       SELECT kit FROM inside WHERE kit = part`,
    ),
  ]
}

/** One source that says two things of one model on the same terms. */
function listContradictions(database: TestCatalogue['database']): unknown[] {
  unpackFitments(database)
  return [
    ...database.tuples(
      `SELECT one.terms_id, other.terms_id, mine.model_id
       FROM fitment_terms AS one JOIN fitment_terms AS other
         ON one.terms_id < other.terms_id AND one.source_id = other.source_id
         AND one.family_id IS other.family_id AND one.part_id IS other.part_id
         AND one.made_from IS other.made_from AND one.made_to IS other.made_to
         AND one.serial_from IS other.serial_from AND one.serial_to IS other.serial_to
         AND one.position IS other.position
       JOIN said AS mine ON mine.terms_id = one.terms_id
       JOIN said AS theirs ON theirs.terms_id = other.terms_id AND theirs.model_id = mine.model_id`,
    ),
  ]
}
