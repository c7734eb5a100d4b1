import { describe, expect, test } from 'vitest'
import { dumpOf } from '../../../builders/dump-database.ts'
import { openTestCatalogue, problemOf, type TestCatalogue } from '../../../builders/open-test-catalogue.ts'
import { smallCatalogue, withRows } from '../../../builders/small-catalogue.ts'

/** What a person sees of the catalogue: every table without the ones that only grow, and the stock that is summed. */
function stateOf({ database }: TestCatalogue) {
  const dump = dumpOf(database)
  for (const table of growing) delete dump[table]
  const stock = [
    ...database.tuples(
      `SELECT part_id, location_id, sum(quantity) AS on_hand FROM (
         SELECT part_id, to_location_id AS location_id, quantity FROM movement
         UNION ALL SELECT part_id, from_location_id, -quantity FROM movement)
       WHERE location_id IS NOT NULL GROUP BY 1, 2 HAVING on_hand <> 0 ORDER BY 1, 2`,
    ),
  ]
  return { dump, stock }
}

function namesOf({ database }: TestCatalogue) {
  return {
    models: [...database.tuples('SELECT model_number, watts FROM model ORDER BY 1')],
    offers: [
      ...database.tuples('SELECT part_number, price FROM offer JOIN part USING (part_id) ORDER BY 1, 2'),
    ],
  }
}

const growing = [
  'catalogue_state',
  'movement',
  'load_run',
  'load_change',
  'load_account',
  'loaded_file',
  'fitment_change',
  'fitment_terms',
  'source',
  'sqlite_sequence',
]

const second = {
  ...smallCatalogue,
  'models.csv': `${smallCatalogue['models.csv'].replace('2150', '2300')}Ostrel,OW 4599/01,washer,,,,,,\n`,
  'offers.csv': `${smallCatalogue['offers.csv'].replace('12.50', '13.10')}DEALER,1E5,D2,4.00,1,1,1\n`,
  'opening_stock.csv': smallCatalogue['opening_stock.csv'].replace(',5,A1', ',7,A1'),
  'families.csv': smallCatalogue['families.csv'].replace('mains|water|moving', 'mains|water'),
  'fitments.csv': `${smallCatalogue['fitments.csv']}excludes,,PX 7,Ostrel,OW 4530/01,,,,,,,Counter notes\n`,
}

const undoing = { reason: 'the wrong list', initials: 'AB' }

describe('a load that is undone', () => {
  test('leaves the catalogue and the stock as they were before it', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    const before = stateOf(catalogue)
    await catalogue.load(second)
    expect(stateOf(catalogue)).not.toEqual(before)
    const { restored, kept } = await catalogue.undo({ loadRunId: 2, ...undoing })
    expect(kept).toEqual([])
    expect(restored).toBeGreaterThan(5)
    expect(stateOf(catalogue)).toEqual(before)
  })

  test('comes back by loading its files again; its undoing is not itself undone', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    await catalogue.load(second)
    const { models, offers } = namesOf(catalogue)
    const { loadRunId } = await catalogue.undo({ loadRunId: 2, ...undoing })
    expect(await problemOf(catalogue.undo({ loadRunId, ...undoing }))).toMatchObject({
      code: 'load-is-undoing',
    })
    await catalogue.load(second)
    expect(namesOf(catalogue)).toEqual({ models, offers })
  })

  test('can be loaded again', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    await catalogue.undo({ loadRunId: 1, ...undoing })
    const { rejected } = await catalogue.load(smallCatalogue)
    expect(rejected).toEqual([])
    expect([...catalogue.database.tuples('SELECT model_number FROM model ORDER BY 1')]).toHaveLength(4)
    expect(catalogue.loads().map(({ loadRunId, undoes, undoneBy }) => [loadRunId, undoes, undoneBy])).toEqual(
      [
        [3, null, null],
        [2, 1, null],
        [1, null, 2],
      ],
    )
  })

  test('keeps the parts that the ledger names, and what they need', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    const { kept } = await catalogue.undo({ loadRunId: 1, ...undoing })
    expect(Object.fromEntries(kept.map(({ table, rows }) => [table, rows]))).toMatchObject({
      part: 2,
      location: 2,
    })
    expect(stateOf(catalogue).stock).toEqual([])
  })

  test('is refused when a later load changed the same rows, until that is undone', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    const before = stateOf(catalogue)
    await catalogue.load(second)
    await catalogue.load({ ...second, 'offers.csv': second['offers.csv'].replace('13.10', '14.00') })
    const problem = await problemOf(catalogue.undo({ loadRunId: 2, ...undoing }))
    expect(problem).toEqual({ code: 'load-built-upon', loadRunId: 2, later: 3 })
    await catalogue.undo({ loadRunId: 3, ...undoing })
    await catalogue.undo({ loadRunId: 2, ...undoing })
    expect(stateOf(catalogue)).toEqual(before)
  })

  test('is refused the second time, and so is one that never was', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    await catalogue.undo({ loadRunId: 1, ...undoing })
    expect(await problemOf(catalogue.undo({ loadRunId: 1, ...undoing }))).toEqual({
      code: 'load-undone-already',
      loadRunId: 1,
      undoneBy: 2,
    })
    expect(await problemOf(catalogue.undo({ loadRunId: 9, ...undoing }))).toMatchObject({
      code: 'load-not-found',
    })
  })
})

describe('the list of loads', () => {
  test('tells who, when, which file and what became of its rows', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue, { initials: 'AB' })
    const [entry] = catalogue.loads()
    expect(entry).toMatchObject({
      loadRunId: 1,
      at: '2026-11-23T09:00:00.000Z',
      initials: 'AB',
      device: 'test-counter',
    })
    const brands = entry?.files.find(({ file }) => file === 'brands.csv')
    // SHA-256 of "brand\nOstrel\nBrennick\n" as sha256sum (GNU coreutils) prints it.
    expect(brands).toMatchObject({
      added: 2,
      bytes: 22,
      sha256: 'dfb9f510fa6e12baa24217b8aa2e7de53abda220d603af1176f11e9029c1ef31',
    })
  })

  test('shows what a load did to each row, before and after, also when a later one changed it again', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    await catalogue.load({ 'offers.csv': second['offers.csv'] })
    await catalogue.load({ 'offers.csv': second['offers.csv'].replace('13.10', '14.00') })
    expect(catalogue.read(2).changes).toEqual([
      {
        table: 'offer',
        change: 'changed',
        row: '0048-0121 · DEALER · 1',
        columns: [{ column: 'price', before: '12.50', after: '13.10' }],
      },
      expect.objectContaining({ table: 'offer', change: 'added', row: '1E5 · DEALER · 1' }),
    ])
  })
})

describe('a new edition', () => {
  const without = smallCatalogue['offers.csv'].replace(/.*11\.25.*\n/, '')

  test('retires the offers of its supplier that it no longer has, and an undo brings them back', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    const before = stateOf(catalogue)
    const { files, changes } = await catalogue.load(
      { 'offers.csv': without },
      { edition: true, showChanges: 10 },
    )
    expect(files[0]).toMatchObject({ unchanged: 1, retired: 1, rejected: 0 })
    expect(changes).toMatchObject([{ table: 'offer', change: 'removed', row: '0048-0121 · DEALER · 10' }])
    expect([...catalogue.database.tuples('SELECT price FROM offer')]).toEqual([['12.50']])
    await catalogue.undo({ loadRunId: 2, ...undoing })
    expect(stateOf(catalogue)).toEqual(before)
  })

  test('leaves the offers of other suppliers alone', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(withRows('suppliers.csv', 'OTHER,Other Spares,GBP,,,,1'))
    await catalogue.load({ 'offers.csv': 'supplier,part_number,price\nOTHER,1E5,3.00\n' }, { edition: true })
    expect([...catalogue.database.tuples('SELECT count(*) FROM offer')]).toEqual([[3]])
  })

  test('retires nothing while a row is rejected, for that row may say it anew', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    const faulty = `${without}DEALER,0048-0121,D1,11.2x,10,5,10\n`
    const { files } = await catalogue.load({ 'offers.csv': faulty }, { edition: true })
    expect(files[0]).toMatchObject({ retired: 0, rejected: 1 })
  })

  test('on a dry run only tells what it would retire', async () => {
    const catalogue = openTestCatalogue()
    await catalogue.load(smallCatalogue)
    const before = dumpOf(catalogue.database)
    const { files } = await catalogue.load({ 'offers.csv': without }, { edition: true, dryRun: true })
    expect(files[0]).toMatchObject({ retired: 1 })
    expect(dumpOf(catalogue.database)).toEqual(before)
  })
})
