import { describe, expect, test } from 'vitest'
import { openTestCatalogue, type TestCatalogue } from '../../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../../builders/small-catalogue.ts'
import { unpackFitments } from '../../../builders/unpack-fitments.ts'

const header = 'says,family,brand,model_number,quantity,source'

function listOf(...rows: readonly string[]): string {
  return `${header}\n${rows.map(row => `includes,door-lock,${row}\n`).join('')}`
}

function saidBy({ database }: TestCatalogue, source: string): string[] {
  unpackFitments(database)
  return [
    ...database.tuples<[string]>(
      `SELECT model_number FROM said JOIN model USING (model_id) JOIN fitment_terms USING (terms_id)
         JOIN source USING (source_id) WHERE source.name = ? ORDER BY model_number`,
      source,
    ),
  ].map(([number]) => number)
}

async function loadedWith(...rows: readonly string[]): Promise<TestCatalogue> {
  const catalogue = openTestCatalogue()
  await catalogue.load(smallCatalogue)
  await catalogue.load({ 'fitments.csv': listOf(...rows) })
  return catalogue
}

const first = ['Ostrel,OW 4512/01,1,New list', 'Ostrel,OW 4512/02,1,New list', 'Brennick,4821-07,,New list']

describe('a new edition of a list of fitments', () => {
  const check = async (rows: readonly string[], retired: number, left: readonly string[]) => {
    const catalogue = await loadedWith(...first)
    const { files } = await catalogue.load({ 'fitments.csv': listOf(...rows) }, { edition: true })
    expect(files).toMatchObject([{ rejected: 0, retired }])
    expect(saidBy(catalogue, 'New list')).toEqual(left)
    expect(saidBy(catalogue, 'Ostrel parts list')).toEqual(['OW 4512/01'])
  }
  const cases: readonly (readonly [string, readonly string[], number, readonly string[]])[] = [
    ['that says the same retires nothing', first, 0, ['4821-07', 'OW 4512/01', 'OW 4512/02']],
    ['retires the rows that it lacks', first.slice(1), 1, ['4821-07', 'OW 4512/02']],
    ['retires statements that it lacks as a whole', first.slice(0, 2), 1, ['OW 4512/01', 'OW 4512/02']],
    [
      'keeps what it says otherwise, once',
      ['Ostrel,OW 4512/01,2,New list', ...first.slice(1)],
      0,
      ['4821-07', 'OW 4512/01', 'OW 4512/02'],
    ],
    ['keeps what a wildcard of it covers', ['Ostrel,OW 4512*,1,New list'], 1, ['OW 4512/01', 'OW 4512/02']],
  ]
  test.each(cases)('%s', (_title, rows, retired, left) => check(rows, retired, left))

  test('that lacks a wildcard retires it, so that it covers no model that comes later', async () => {
    const catalogue = await loadedWith('Ostrel,OW 45*,1,New list')
    const { files } = await catalogue.load(
      { 'fitments.csv': listOf(...first.slice(0, 1)) },
      { edition: true },
    )
    expect(files).toMatchObject([{ retired: 3 }])
    await catalogue.load({ 'models.csv': 'brand,model_number\nOstrel,OW 4599\n' })
    expect(saidBy(catalogue, 'New list')).toEqual(['OW 4512/01'])
  })

  test('retires nothing while a row is rejected, for that row may say it anew', async () => {
    const catalogue = await loadedWith(...first)
    const rows = listOf('Ostrel,OW 4512/01,one,New list')
    const { files } = await catalogue.load({ 'fitments.csv': rows }, { edition: true })
    expect(files).toMatchObject([{ retired: 0, rejected: 1 }])
    expect(saidBy(catalogue, 'New list')).toHaveLength(3)
  })

  test('that is undone is as if it had never come', async () => {
    const catalogue = await loadedWith(...first)
    const { files } = await catalogue.load({ 'fitments.csv': listOf(...first.slice(2)) }, { edition: true })
    expect(files).toMatchObject([{ retired: 2 }])
    await catalogue.undo({ loadRunId: 3, reason: 'too short', initials: 'AB' })
    expect(saidBy(catalogue, 'New list')).toHaveLength(3)
  })
})

test('of several rows that contradict one another the later ones are rejected as they stood', async () => {
  const catalogue = openTestCatalogue()
  await catalogue.load(smallCatalogue)
  const rows = [
    'Ostrel,OW 4512/01,1,New list',
    'Ostrel, OW 4512/01 ,2,New list',
    'Ostrel,OW 4512/02,2,New list',
    'Ostrel,OW 45*,1,New list',
    'Ostrel,OW 4530/01,1,New list',
  ]
  const { files, rejected } = await catalogue.load({ 'fitments.csv': listOf(...rows) })
  expect(files).toMatchObject([{ added: 3, rejected: 2 }])
  expect(rejected.map(({ line, column, reason }) => [line, column, reason])).toEqual([
    [3, '', expect.stringContaining('contradicts line 2')],
    [5, '', expect.stringContaining('contradicts line 4')],
  ])
})
