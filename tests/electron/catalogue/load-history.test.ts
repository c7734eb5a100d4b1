import { expect, test } from 'vitest'
import { z } from 'zod'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import { smallCatalogue, withRows } from '../../builders/small-catalogue.ts'
import { unpackFitments } from '../../builders/unpack-fitments.ts'

const header = smallCatalogue['fitments.csv'].split('\n')[0]

/** After each of these loads in turn: what the runs did, and which changes of fitments were kept one by one. */
async function check(loads: readonly Readonly<Record<string, string>>[], expected: Kept) {
  const { database, load } = openTestCatalogue()
  for (const files of loads) await load(files)
  const runs = database.rows(
    z.object({ run: z.int(), added: z.int(), changed: z.int(), first: z.int(), at: z.string() }),
    `SELECT load_run_id AS run, added, changed, first_fitments AS first, loaded_at AS at FROM load_run
     ORDER BY load_run_id`,
  )
  unpackFitments(database)
  const changes = database.rows(
    z.object({ text: z.string() }),
    `SELECT load_run_id || ' ' || change || ': ' || model_number || ' ' || says || ' ' || ifnull(quantity, '-') AS text
     FROM changed JOIN model USING (model_id) JOIN fitment_terms USING (terms_id)
     ORDER BY load_run_id, change DESC, model_number`,
  )
  expect(runs.map(({ added, changed, first }) => [added, changed, first])).toEqual(expected.runs)
  expect(new Set(runs.map(({ at }) => at))).toEqual(new Set(['2026-11-23T09:00:00.000Z']))
  expect(changes.map(({ text }) => text)).toEqual(expected.changes)
  database.close()
}

interface Kept {
  readonly runs: readonly (readonly [added: number, changed: number, firstFitments: number])[]
  readonly changes: readonly string[]
}

const all = Object.values(smallCatalogue).reduce(
  (rows, text) => rows + text.trimEnd().split('\n').length - 1,
  0,
)
const { 'fitments.csv': fitments, ...others } = smallCatalogue
const fitmentRows = fitments.trimEnd().split('\n').length - 1

const cases: readonly (readonly [title: string, loads: Parameters<typeof check>[0], expected: Kept])[] = [
  ['the first load keeps that it took place', [smallCatalogue], { runs: [[all, 0, 1]], changes: [] }],
  [
    'loading the same again keeps nothing',
    [smallCatalogue, smallCatalogue],
    { runs: [[all, 0, 1]], changes: [] },
  ],
  [
    'the first fitments may come in a later load',
    [others, { 'fitments.csv': fitments }],
    {
      runs: [
        [all - fitmentRows, 0, 0],
        [fitmentRows, 0, 1],
      ],
      changes: [],
    },
  ],
  [
    'a later load keeps each fitment that it adds',
    [smallCatalogue, { 'fitments.csv': `${header}\nexcludes,,1E5,Brennick,4821-07,,,,,,,Recall\n` }],
    {
      runs: [
        [all, 0, 1],
        [1, 0, 0],
      ],
      changes: ['2 said: 4821-07 excludes -'],
    },
  ],
  [
    'a statement that changed was withdrawn and said anew',
    [smallCatalogue, { 'fitments.csv': fitments.replace('left,2,', 'left,1,') }],
    {
      runs: [
        [all, 0, 1],
        [0, 1, 0],
      ],
      changes: ['2 withdrawn: 4821-07 includes 2', '2 said: 4821-07 includes 1'],
    },
  ],
  [
    'a model that a wildcard covers later is covered from then',
    [smallCatalogue, withRows('models.csv', 'Ostrel,OW 4599/01,washer,,,,,,')],
    {
      runs: [
        [all, 0, 1],
        [1, 0, 0],
      ],
      changes: ['2 said: OW 4599/01 includes 1'],
    },
  ],
  [
    'a model that a wildcard covers and a row of the same load says otherwise of',
    [
      smallCatalogue,
      {
        ...withRows('models.csv', 'Ostrel,OW 4599/01,washer,,,,,,'),
        'fitments.csv': `${header}\nincludes,drain-pump,,Ostrel,OW 4599/01,,,,,,2,Dealer list\n`,
      },
    ],
    {
      runs: [
        [all, 0, 1],
        [1, 1, 0],
      ],
      changes: [
        '2 withdrawn: OW 4599/01 includes 1',
        '2 said: OW 4599/01 includes 1',
        '2 said: OW 4599/01 includes 2',
      ],
    },
  ],
]
test.each(cases)('%s', (_title, loads, expected) => check(loads, expected))

test('a dry run and a load that is refused keep nothing', async () => {
  const { database, load } = openTestCatalogue()
  await load(smallCatalogue, { dryRun: true })
  const spoilt = withRows('models.csv', 'Nobody,X 1,washer,,,,,,')
  await expect(load(spoilt, { strict: true })).rejects.toThrow('rows-rejected')
  expect([...database.tuples('SELECT load_run_id FROM load_run')]).toEqual([])
  database.close()
})
