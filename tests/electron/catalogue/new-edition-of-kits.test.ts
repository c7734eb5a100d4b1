import { expect, test } from 'vitest'
import { openTestCatalogue, type TestCatalogue } from '../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

const kits = (...rows: readonly string[]) => ['kit,part_number,quantity', ...rows, ''].join('\n')
const together = (...rows: readonly string[]) =>
  ['part_number,with_part,quantity,why', ...rows, ''].join('\n')

async function openWithKits(): Promise<TestCatalogue> {
  const catalogue = openTestCatalogue()
  await catalogue.load({
    ...smallCatalogue,
    'kits.csv': kits('PX 7,0048-0123,2', 'PX 7,1E5,1', '0048-0121,0048-0122,1'),
    'replaced_together.csv': together('PX 7,0048-0123,1,', 'PX 7,1E5,1,', '1E5,PX 7,1,'),
  })
  return catalogue
}

const namedRows = ({ database }: TestCatalogue, table: string, [one, other]: readonly [string, string]) => [
  ...database.tuples(
    `SELECT whole.part_number, piece.part_number FROM ${table}
     JOIN part AS whole ON whole.part_id = ${one} JOIN part AS piece ON piece.part_id = ${other} ORDER BY 1, 2`,
  ),
]
const inKits = (catalogue: TestCatalogue) =>
  namedRows(catalogue, 'kit_content', ['kit_part_id', 'kit_content.part_id'])
const replaced = (catalogue: TestCatalogue) =>
  namedRows(catalogue, 'replaced_together', ['replaced_together.part_id', 'with_part_id'])

test('a new edition of a kit retires what no longer comes in it; other kits stay', async () => {
  const catalogue = await openWithKits()
  const report = await catalogue.load({ 'kits.csv': kits('PX 7,0048-0123,2') }, { edition: true })
  expect(report.files).toMatchObject([{ file: 'kits.csv', unchanged: 1, retired: 1 }])
  expect(inKits(catalogue)).toEqual([
    ['0048-0121', '0048-0122'],
    ['PX 7', '0048-0123'],
  ])
})

test('a new edition of what is replaced together retires what goes with a part no more', async () => {
  const catalogue = await openWithKits()
  const report = await catalogue.load(
    { 'replaced_together.csv': together('PX 7,0048-0123,1,') },
    { edition: true },
  )
  expect(report.files).toMatchObject([{ file: 'replaced_together.csv', unchanged: 1, retired: 1 }])
  expect(replaced(catalogue)).toEqual([
    ['1E5', 'PX 7'],
    ['PX 7', '0048-0123'],
  ])
})

test('a list that is no whole edition retires nothing, nor does one with a rejected row', async () => {
  const catalogue = await openWithKits()
  const before = [inKits(catalogue), replaced(catalogue)]
  await catalogue.load({
    'kits.csv': kits('PX 7,0048-0123,2'),
    'replaced_together.csv': together('PX 7,0048-0123,1,'),
  })
  await catalogue.load(
    {
      'kits.csv': kits('PX 7,0048-0123,2', 'PX 7,no such part,1'),
      'replaced_together.csv': together('PX 7,0048-0123,1,', 'PX 7,no such part,1,'),
    },
    { edition: true },
  )
  expect([inKits(catalogue), replaced(catalogue)]).toEqual(before)
})

test('undoing a new edition brings back what it retired', async () => {
  const catalogue = await openWithKits()
  const before = inKits(catalogue)
  await catalogue.load({ 'kits.csv': kits('PX 7,0048-0123,2') }, { edition: true })
  const [latest] = catalogue.loads()
  await catalogue.undo({ loadRunId: latest?.loadRunId ?? 0, reason: 'wrong list', initials: 'MK' })
  expect(inKits(catalogue)).toEqual(before)
})
