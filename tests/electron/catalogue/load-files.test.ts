import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { z } from 'zod'
import { readCatalogueVersion } from '../../../electron/catalogue/catalogue-state-queries.ts'
import type { CatalogueTexts } from '../../builders/catalogue-folder.ts'
import { dumpOf } from '../../builders/dump-database.ts'
import { openTestCatalogue, problemOf, type TestCatalogue } from '../../builders/open-test-catalogue.ts'
import { firstAddedLine, smallCatalogue, withRows } from '../../builders/small-catalogue.ts'
import { unpackFitments } from '../../builders/unpack-fitments.ts'

const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-load-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** Loads one folder after the other into one shop. */
async function loadInTurn(...loads: readonly CatalogueTexts[]): Promise<TestCatalogue> {
  const catalogue = openTestCatalogue()
  for (const files of loads) await catalogue.load(files)
  return catalogue
}

describe('a load', () => {
  test('takes every row of a sound catalogue', async () => {
    const { files, rejected } = await openTestCatalogue().load(smallCatalogue)
    expect(rejected).toEqual([])
    expect(files).toHaveLength(Object.keys(smallCatalogue).length)
    for (const { file, added, changed, unchanged } of files) {
      const rows = smallCatalogue[file as keyof typeof smallCatalogue].trimEnd().split('\n').length - 1
      expect({ file, added, changed, unchanged }).toEqual({ file, added: rows, changed: 0, unchanged: 0 })
    }
  })

  test('raises the catalogue version once, and not when it changed nothing', async () => {
    const { database, load } = openTestCatalogue()
    expect(readCatalogueVersion(database)).toBe(0)
    await load(smallCatalogue)
    expect(readCatalogueVersion(database)).toBe(1)
    await load(smallCatalogue)
    expect(readCatalogueVersion(database)).toBe(1)
  })

  test('changes nothing and says so when the same folder is loaded again', async () => {
    const { database, load } = await loadInTurn(smallCatalogue)
    const before = dumpOf(database)
    const { files } = await load(smallCatalogue)
    for (const { file, ...counts } of files)
      expect(counts, file).toMatchObject({ added: 0, changed: 0, rejected: 0 })
    expect(dumpOf(database)).toEqual(before)
  })

  test('changes nothing on a dry run, and counts as if it had', async () => {
    const { database, load } = openTestCatalogue()
    const before = dumpOf(database)
    const { files, dryRun } = await load(smallCatalogue, { dryRun: true })
    expect(dryRun).toBe(true)
    expect(files[1]).toMatchObject({ file: 'models.csv', added: 4 })
    expect(dumpOf(database)).toEqual(before)
  })

  test('keeps no row when a header is wrong in a later file', async () => {
    const { database, load } = openTestCatalogue()
    const before = dumpOf(database)
    const problem = await problemOf(load({ ...smallCatalogue, 'jobs.csv': 'job,date,colour,job\n' }))
    expect(problem).toMatchObject({
      code: 'wrong-header',
      unknown: ['colour'],
      missing: [],
      repeated: ['job'],
    })
    expect(dumpOf(database)).toEqual(before)
  })

  test('keeps the sound rows when others are rejected, unless it is to be strict', async () => {
    const files = withRows('brands.csv', '--')
    const lenient = openTestCatalogue()
    expect((await lenient.load(files)).rejected).toHaveLength(1)
    expect(readCatalogueVersion(lenient.database)).toBe(1)

    const strict = openTestCatalogue()
    const before = dumpOf(strict.database)
    const problem = await problemOf(strict.load(files, { strict: true }))
    expect(problem).toMatchObject({
      code: 'rows-rejected',
      rejected: 1,
      first: [{ file: 'brands.csv', line: firstAddedLine('brands.csv'), column: 'brand' }],
    })
    expect(dumpOf(strict.database)).toEqual(before)
  })

  test('counts an identical row of the same file as unchanged', async () => {
    const { files, rejected } = await openTestCatalogue().load(
      withRows('fitments.csv', 'includes,drain-pump,,Ostrel,OW-4512-01,,,,,,1,Ostrel parts list'),
    )
    expect(rejected).toEqual([])
    expect(files.find(({ file }) => file === 'fitments.csv')).toMatchObject({ added: 3, unchanged: 1 })
  })

  test('names the line on which a row begins, though a cell above holds line ends', async () => {
    const { rejected } = await openTestCatalogue().load({
      'locations.csv': 'location,kind,name\r\nshop,shop,"The\r\nshop"\r\n\r\nloft,attic,Loft\r\n',
    })
    expect(rejected).toMatchObject([{ line: 5, column: 'kind' }])
  })

  test('takes columns in any order and without those that need not be there', async () => {
    const { rejected, files } = await openTestCatalogue().load({
      'brands.csv': '\u{feff}brand\nOstrel',
      'models.csv': 'volts,model_number,brand\n230,OW 1,Ostrel\n',
    })
    expect(rejected).toEqual([])
    expect(files[1]).toMatchObject({ added: 1 })
  })
})

describe('a later load with other values', () => {
  const cases: readonly (readonly [
    title: string,
    file: keyof typeof smallCatalogue,
    from: string,
    to: string,
  ])[] = [
    ['a brand spelt otherwise', 'brands.csv', 'Brennick', 'BRENNICK'],
    ['a model with its watts', 'models.csv', 'OW 4530/01,washer,,,,,,', 'OW 4530/01,washer,,,,,,900'],
    ['a sales name spelt otherwise', 'sales_names.csv', 'Aqualane 44,OW 4512/01', 'AquaLane 44,OW 4512/01'],
    ['a family with one hazard more', 'families.csv', 'door,washer,mains,', 'door,washer,mains|hot,'],
    ['another tolerance', 'attributes.csv', 'within,0.1', 'within,0.2'],
    ['a part with another attribute', 'parts.csv', 'watts=30', 'watts=34'],
    [
      'a number that is printed on another part',
      'cross_references.csv',
      'B20-6A,0048-0121',
      'B20-6A,0048-0122',
    ],
    ['a model attribute', 'model_attributes.csv', 'spigot,22 mm', 'spigot,24 mm'],
    [
      'a fitment that says the opposite',
      'fitments.csv',
      'includes,drain-pump,,Ostrel,OW 4512/01',
      'excludes,drain-pump,,Ostrel,OW 4512/01',
    ],
    ['a fitment with another quantity', 'fitments.csv', 'left,2,', 'left,1,'],
    ['a replacement that no longer needs anything', 'supersessions.csv', 'one,,,PX 7', 'one,,,'],
    ['a kit with fewer pieces', 'kits.csv', '0048-0123,2', '0048-0123,1'],
    ['a reason to replace together that is left out', 'replaced_together.csv', 'the seals take a set', ''],
    ['a date code with another meaning', 'date_codes.csv', 'year=2-digit', 'year=1-digit'],
    ['a supplier with a longer lead time', 'suppliers.csv', '120.00,2', '120.00,5'],
    ['an offer with another price', 'offers.csv', '12.50', '13.10'],
    ['a place with another name', 'locations.csv', 'shop,shop,Shop', 'shop,shop,Weir Lane'],
    ['stock in another bin', 'opening_stock.csv', 'A1', 'B7'],
    ['use that was more', 'usage.csv', '1E5,1,J1', '1E5,2,J1'],
    ['a van list with a higher level', 'van_lists.csv', '1E5,2', '1E5,3'],
    ['a job with its outcome', 'jobs.csv', 'J2,2026-01-06,,,,,,', 'J2,2026-01-06,,,,,door-lock,no'],
  ]
  test.each(cases)('%s is one change, and stands when loaded again', async (_title, file, from, to) => {
    const changedText = smallCatalogue[file].replace(from, to)
    expect(changedText).not.toBe(smallCatalogue[file])
    const { load } = await loadInTurn(smallCatalogue)
    const first = await load({ [file]: changedText })
    expect(first).toMatchObject({ files: [{ file, added: 0, changed: 1, rejected: 0 }], rejected: [] })
    const again = await load({ [file]: changedText })
    expect(again.files).toMatchObject([{ added: 0, changed: 0, rejected: 0 }])
  })

  test('a fitment that now says the opposite leaves nothing of what was said before', async () => {
    const { database } = await loadInTurn(smallCatalogue, {
      'fitments.csv': `${smallCatalogue['fitments.csv'].split('\n')[0]}\nexcludes,drain-pump,,Ostrel,OW 45*,,,,,,,Dealer list\n`,
    })
    unpackFitments(database)
    const says = database.rows(
      z.object({ says: z.string(), models: z.int() }),
      `SELECT says, count(*) AS models FROM said JOIN fitment_terms USING (terms_id) JOIN source USING (source_id)
       WHERE source.name = 'Dealer list' GROUP BY says`,
    )
    expect(says).toEqual([{ says: 'excludes', models: 3 }])
  })
})

describe('wildcards', () => {
  const header = smallCatalogue['fitments.csv'].split('\n')[0]
  const modelsOf = (database: TestCatalogue['database'], source: string) => {
    unpackFitments(database)
    return database
      .rows(
        z.object({ model_number: z.string() }),
        `SELECT model_number FROM said JOIN fitment_terms USING (terms_id) JOIN source USING (source_id)
         JOIN model USING (model_id) WHERE source.name = ? ORDER BY model_number`,
        source,
      )
      .map(row => row.model_number)
  }

  const cases: readonly (readonly [pattern: string, models: readonly string[]])[] = [
    ['OW 45*', ['OW 4512/01', 'OW 4512/02', 'OW 4530/01']],
    ['ow45*', ['OW 4512/01', 'OW 4512/02', 'OW 4530/01']],
    ['OW 4512/0?', ['OW 4512/01', 'OW 4512/02']],
    ['*/01', ['OW 4512/01', 'OW 4530/01']],
    ['OW451?.01', ['OW 4512/01']],
    ['OW4512/01*', ['OW 4512/01']],
    ['*', ['OW 4512/01', 'OW 4512/02', 'OW 4530/01']],
    ['O**?1', ['OW 4512/01', 'OW 4530/01']],
  ]
  test.each(cases)('%s means %j', async (pattern, models) => {
    const { database } = await loadInTurn(smallCatalogue, {
      'fitments.csv': `${header}\nincludes,door-lock,,Ostrel,${pattern},,,,,,1,Wild list\n`,
    })
    expect(modelsOf(database, 'Wild list')).toEqual(models)
  })

  test('cover a model of that brand that is loaded later, and no other', async () => {
    const { database } = await loadInTurn(smallCatalogue, {
      'models.csv': 'brand,model_number\nOstrel,OW 4599\nOstrel,XW 4599\nBrennick,OW 4598\n',
    })
    expect(modelsOf(database, 'Dealer list')).toEqual(['OW 4512/01', 'OW 4512/02', 'OW 4530/01', 'OW 4599'])
  })
})

describe('kits', () => {
  const header = 'kit,part_number,quantity'
  const kits = (...lines: readonly string[]) => ({ 'kits.csv': `${header}\n${lines.join('\n')}\n` })
  const storedKits = (database: TestCatalogue['database']) => [
    ...database.tuples(
      `SELECT kit.part_number, inner.part_number, quantity FROM kit_content
       JOIN part AS kit ON kit.part_id = kit_part_id JOIN part AS inner ON inner.part_id = kit_content.part_id
       ORDER BY 1, 2`,
    ),
  ]

  test('a kit may hold another kit', async () => {
    const { database, load } = await loadInTurn(smallCatalogue)
    const { rejected } = await load(kits('0048-0123,1E5,3', '0048-0122,PX 7,1'))
    expect(rejected).toEqual([])
    expect(storedKits(database)).toEqual([
      ['0048-0122', 'PX 7', 1],
      ['0048-0123', '1E5', 3],
      ['PX 7', '0048-0123', 2],
    ])
  })

  test('a row that lets a kit come in itself through others is refused, with the chain', async () => {
    const { database, load } = await loadInTurn(smallCatalogue)
    const { rejected } = await load(kits('0048-0123,1E5,1', '1E5,PX 7,1', '1E5,0048-0121,1'))
    expect(rejected).toEqual([
      expect.objectContaining({ line: 2, column: 'part_number', reason: expect.stringMatching(loop) }),
      expect.objectContaining({ line: 3, column: 'part_number', reason: expect.stringMatching(loop) }),
    ])
    expect(storedKits(database)).toEqual([
      ['1E5', '0048-0121', 1],
      ['PX 7', '0048-0123', 2],
    ])
  })
  const loop = /^closes a loop, (\S.*) -> .* -> \1: no kit comes in itself; take out the row that is wrong$/

  test('a row said twice is one, and one said otherwise contradicts', async () => {
    const { load } = await loadInTurn(smallCatalogue)
    const report = await load(kits('1E5,PX 7,1', '1e5,PX-7,1', '1E5,PX 7,2'))
    expect(report).toMatchObject({
      files: [{ added: 1, changed: 0, unchanged: 1, rejected: 1 }],
      rejected: [{ line: 4, reason: expect.stringMatching(/^contradicts line 2/) }],
    })
  })
})

test('what is replaced together is said in one direction, and of a part with itself as the whole number', async () => {
  const { database, load } = await loadInTurn(smallCatalogue)
  const report = await load({
    'replaced_together.csv':
      'part_number,with_part,quantity,why\n1E5,1E5,2,locks wear alike\n1E5,PX 7,1,\n1e5,PX-7,1,\n1E5,PX 7,3,\n',
  })
  expect(report).toMatchObject({
    files: [{ added: 2, changed: 0, unchanged: 1, rejected: 1 }],
    rejected: [{ line: 5, reason: expect.stringMatching(/^contradicts line 4/) }],
  })
  expect([
    ...database.tuples(
      `SELECT part.part_number, other.part_number, quantity, why FROM replaced_together
       JOIN part USING (part_id) JOIN part AS other ON other.part_id = with_part_id ORDER BY 1, 2`,
    ),
  ]).toEqual([
    ['1E5', '1E5', 2, 'locks wear alike'],
    ['1E5', 'PX 7', 1, null],
    ['PX 7', '0048-0123', 1, 'the seals take a set'],
  ])
})

describe('supersessions', () => {
  const header = smallCatalogue['supersessions.csv'].split('\n')[0]
  const parts = (...numbers: string[]) => ({
    ...smallCatalogue,
    'parts.csv': `part_number,family,kind\n${numbers.map(number => `${number},drain-pump,genuine`).join('\n')}\n`,
  })

  /** The rows, one `old new way` each, and which of them are rejected with which loop. */
  async function check(rows: readonly string[], expected: readonly (readonly [row: number, loop: string])[]) {
    const lines = rows.map(row => `${row.split(' ').join(',')},,,`)
    const {
      'supersessions.csv': _unused,
      'cross_references.csv': _none,
      'fitments.csv': _no,
      'kits.csv': _kits,
      'replaced_together.csv': _alone,
      ...rest
    } = parts('A', 'B', 'C', 'D', '1E5', '0048-0121', 'PX7')
    const { rejected } = await openTestCatalogue().load({
      ...rest,
      'supersessions.csv': `${header}\n${lines.join('\n')}\n`,
    })
    expect(rejected.map(({ line, reason }) => [line - 1, reason])).toEqual(
      expected.map(([row, loop]) => [row, expect.stringContaining(`a loop, ${loop}:`)]),
    )
  }

  const cases: readonly (readonly [
    title: string,
    rows: readonly string[],
    expected: readonly (readonly [number, string])[],
  ])[] = [
    ['a chain is no loop', ['A B one', 'B C one', 'C D one'], []],
    ['two ways from one part to another are no loop', ['A B one', 'B D one', 'A C one', 'C D one'], []],
    ['parts that replace each other are no loop', ['A B both', 'B C both', 'A C both'], []],
    ['twins within a chain are no loop', ['A B one', 'B C both', 'C D one'], []],
    [
      'three that lead back are all named',
      ['A B one', 'B C one', 'C A one', 'C D one'],
      [
        [1, 'A -> B -> C -> A'],
        [2, 'A -> B -> C -> A'],
        [3, 'A -> B -> C -> A'],
      ],
    ],
    [
      'two that replace each other one way each',
      ['A B one', 'B A one'],
      [
        [1, 'A -> B -> A'],
        [2, 'A -> B -> A'],
      ],
    ],
    [
      'a loop through twins',
      ['A B one', 'B C both', 'C A one'],
      [
        [1, 'A -> B -> C -> A'],
        [2, 'A -> B -> C -> A'],
        [3, 'A -> B -> C -> A'],
      ],
    ],
    [
      'a pair one way and both ways',
      ['A B one', 'B A both'],
      [
        [1, 'A -> B -> A'],
        [2, 'A -> B -> A'],
      ],
    ],
  ]
  test.each(cases)('%s', (_title, rows, expected) => check(rows, expected))

  test('rows rejected at once and at the end are named in the order of their lines', async () => {
    const { rejected } = await openTestCatalogue().load({
      ...parts('A', 'B'),
      'fitments.csv': `${smallCatalogue['fitments.csv'].split('\n')[0]}\n`,
      'cross_references.csv': 'number,part_number\n',
      'opening_stock.csv': 'location,part_number,quantity\n',
      'offers.csv': 'supplier,part_number,price\n',
      'usage.csv': 'date,location,part_number,quantity\n',
      'van_lists.csv': 'van,part_number,family,level\n',
      'kits.csv': 'kit,part_number,quantity\n',
      'replaced_together.csv': 'part_number,with_part,quantity\n',
      'supersessions.csv': `${header}\nA,B,one,,,\nA,Z,one,,,\nB,A,one,,,\n`,
    })
    expect(rejected.map(({ line }) => line)).toEqual([2, 3, 4])
  })

  test('a row that closes a loop with what was loaded before is rejected alone', async () => {
    const { load } = await loadInTurn(smallCatalogue)
    const { rejected } = await load({ 'supersessions.csv': `${header}\n0048-0122,0048-0121,one,,,\n` })
    expect(rejected).toMatchObject([
      { line: 2, reason: expect.stringContaining('0048-0121 -> 0048-0122 -> 0048-0121') },
    ])
  })
})

describe('opening stock', () => {
  const header = 'location,part_number,quantity,bin'
  const movementRow = z.object({
    kind: z.string(),
    quantity: z.int(),
    going: z.string(),
    reason: z.string(),
  })
  const movementsOf = ({ database }: TestCatalogue) =>
    database.rows(
      movementRow,
      `SELECT movement.kind, quantity, reason, iif(to_location_id IS NULL, 'out', 'in') AS going
       FROM movement JOIN part USING (part_id) WHERE part_number = '0048-0121' ORDER BY movement_id`,
    )

  test('is received into the book once, however often it is loaded', async () => {
    const catalogue = await loadInTurn(smallCatalogue, smallCatalogue)
    expect(movementsOf(catalogue)).toEqual([
      { kind: 'receipt', quantity: 5, going: 'in', reason: 'opening stock' },
    ])
  })

  test('moves the book by the difference when it is stated otherwise later', async () => {
    const catalogue = await loadInTurn(
      smallCatalogue,
      { 'opening_stock.csv': `${header}\nshop,0048-0121,8,A1\n` },
      { 'opening_stock.csv': `${header}\nshop,0048-0121,2,A1\n` },
      { 'opening_stock.csv': `${header}\nshop,0048-0121,2,C3\n` },
    )
    expect(movementsOf(catalogue).slice(1)).toEqual([
      { kind: 'adjustment', quantity: 3, going: 'in', reason: 'opening stock corrected' },
      { kind: 'adjustment', quantity: 6, going: 'out', reason: 'opening stock corrected' },
    ])
  })
})

test('rows of use of one day, place, part and job add up', async () => {
  const { database, load } = openTestCatalogue()
  const more = withRows(
    'usage.csv',
    '2026-01-05,van-1,1E5,2,J1',
    '2026-01-05,van-1,1E5,1,J2',
    '2026-01-05,van-1,1E5,-1,J1',
  )
  await load(more)
  const used = database.rows(
    z.object({ job: z.string(), quantity: z.int() }),
    "SELECT job, quantity FROM usage WHERE date = '2026-01-05' ORDER BY job",
  )
  expect(used).toEqual([
    { job: 'J1', quantity: 2 },
    { job: 'J2', quantity: 1 },
  ])
  expect((await load(more)).files.find(({ file }) => file === 'usage.csv')).toMatchObject({ unchanged: 5 })
})

test('a csv of another name beside catalogue files is named, and the others are loaded', async () => {
  const { files, leftOut } = await openTestCatalogue().load({
    'prices.csv': 'a',
    'brands.csv': 'brand\nHaldewick\n',
  })
  expect(leftOut).toEqual(['prices.csv'])
  expect(files).toMatchObject([{ file: 'brands.csv', added: 1 }])
})

test('where every row must be sound, so must the name of every csv', async () => {
  const attempt = openTestCatalogue().load(
    { 'prices.csv': 'a', 'brands.csv': 'brand\nHaldewick\n' },
    { strict: true },
  )
  expect(await problemOf(attempt)).toMatchObject({
    code: 'file-not-of-catalogue',
    file: expect.stringContaining('prices.csv'),
  })
})

describe('what cannot be read is refused and changes nothing', () => {
  const cases: readonly (readonly [title: string, files: CatalogueTexts, problem: object])[] = [
    ['a folder without a catalogue file', { 'notes.txt': 'hello' }, { code: 'nothing-to-load' }],
    [
      'a folder whose only csv has another name',
      { 'prices.csv': 'a' },
      { code: 'file-not-of-catalogue', file: expect.stringContaining('prices.csv') },
    ],
    ['an empty file', { 'brands.csv': '' }, { code: 'wrong-header', missing: ['brand'] }],
    [
      'a missing column that is needed',
      { 'parts.csv': 'part_number,kind\n' },
      { code: 'wrong-header', missing: ['family'] },
    ],
    [
      'a header in capitals',
      { 'brands.csv': 'Brand\nOstrel\n' },
      { code: 'wrong-header', unknown: ['Brand'], missing: ['brand'] },
    ],
    [
      'bytes that are not UTF-8, by their line',
      {
        'brands.csv': new Uint8Array([
          ...Buffer.from('brand\r\nOstrel\r\nL'),
          0xf6,
          ...Buffer.from('vane\r\n'),
        ]),
      },
      { code: 'file-unreadable', why: expect.stringContaining('line 3 is not UTF-8') },
    ],
    [
      'a row without end',
      { 'brands.csv': `brand\nOstrel\n"${'x'.repeat(3_000_000)}\n` },
      { code: 'file-unreadable', why: expect.stringContaining('line 3 does not end') },
    ],
  ]
  test.each(cases)('%s', async (_title, files, problem) => {
    const { database, load } = openTestCatalogue()
    const before = dumpOf(database)
    expect(await problemOf(load(files))).toMatchObject(problem)
    expect(dumpOf(database)).toEqual(before)
  })

  test('a path that leads nowhere', async () => {
    const problem = await problemOf(openTestCatalogue().loadPath(path.join(folder, 'nowhere')))
    expect(problem).toMatchObject({ code: 'file-unreadable', why: 'there is no such file or folder' })
  })
})

test('a character of several bytes comes out right wherever the file is cut', async () => {
  const brands = Array.from({ length: 15_000 }, (_, at) => `Løvåne№${at}`)
  const { database, load } = openTestCatalogue()
  await load({ 'brands.csv': `\u{feff}brand\n${brands.join('\n')}` })
  const stored = database.rows(z.object({ name: z.string() }), 'SELECT name FROM brand ORDER BY brand_id')
  expect(stored.map(row => row.name)).toEqual(brands)
})

describe('the file of rejected rows', () => {
  const files = {
    'locations.csv': 'location,kind,name\n=1+1,attic,"@here, ""there"""\n-5,shed,+x\nok,shop,Fine\n',
  }

  test('holds them as they stood, with where and why, and nothing that a spreadsheet would run', async () => {
    const rejectsFile = path.join(folder, 'rejects.csv')
    await openTestCatalogue().load(files, { rejectsFile })
    const lines = readFileSync(rejectsFile, 'utf8').split('\r\n')
    expect(lines[0]).toBe('file,line,column,reason,cell_1,cell_2,cell_3')
    expect(lines[1]).toMatch(/^locations\.csv,2,kind,.*,'=1\+1,attic,"'@here, ""there"""$/)
    expect(lines[2]).toMatch(/^locations\.csv,3,kind,.*,-5,shed,'\+x$/)
    expect(lines.slice(3)).toEqual([''])
    expect(existsSync(`${rejectsFile}.part`)).toBe(false)
  })

  test('is written on a strict load too, which keeps nothing', async () => {
    const rejectsFile = path.join(folder, 'strict.csv')
    expect(await problemOf(openTestCatalogue().load(files, { rejectsFile, strict: true }))).toMatchObject({
      rejected: 2,
    })
    expect(readFileSync(rejectsFile, 'utf8').split('\r\n')).toHaveLength(4)
  })

  test('takes the place of an earlier one and of no other file', async () => {
    const rejectsFile = path.join(folder, 'again.csv')
    await openTestCatalogue().load(files, { rejectsFile })
    await openTestCatalogue().load(files, { rejectsFile })
    const precious = path.join(folder, 'precious.csv')
    writeFileSync(precious, 'brand\nOstrel\n')
    const catalogue = openTestCatalogue()
    expect(await problemOf(catalogue.load(files, { rejectsFile: precious }))).toMatchObject({
      code: 'file-exists',
    })
    expect(readFileSync(precious, 'utf8')).toBe('brand\nOstrel\n')
    expect(readCatalogueVersion(catalogue.database)).toBe(0)
  })

  test('is refused before anything is loaded where it cannot be written', async () => {
    const catalogue = openTestCatalogue()
    const rejectsFile = path.join(folder, 'nowhere', 'rejects.csv')
    expect(await problemOf(catalogue.load(files, { rejectsFile }))).toMatchObject({ code: 'file-unreadable' })
    expect(readCatalogueVersion(catalogue.database)).toBe(0)
  })
})
