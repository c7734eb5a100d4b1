import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dumpOf } from '../../../builders/dump-database.ts'
import { openTestCatalogue, problemOf } from '../../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../../builders/small-catalogue.ts'

const others = Object.fromEntries(
  (['brands.csv', 'models.csv', 'families.csv', 'attributes.csv', 'parts.csv'] as const).map(file => [
    file,
    smallCatalogue[file],
  ]),
)
const written = [
  'source',
  'fitment_terms',
  'fitment_by_model',
  'fitment_by_terms',
  'fitment_pattern',
  'fitment_change',
]
const columns = ['says', 'family', 'part_number', 'brand', 'model_number', 'position', 'quantity', 'source']

/**
 * What a load of the list comes to. With its first heading in quotes, which means the same, the lines are read by the
 * general reader alone, so that the two ways can be compared.
 */
async function loadBothWays(list: string | Uint8Array, header = columns.join()) {
  const body = typeof list === 'string' ? Buffer.from(list) : list
  const texts = [`${header}\n`, `${header.replace(/^[a-z_]+/, '"$&"')}\n`].map(head =>
    Buffer.concat([Buffer.from(head), body]),
  )
  return Promise.all(
    texts.map(async text => {
      const catalogue = openTestCatalogue()
      await catalogue.load(others)
      try {
        const { files, rejected } = await catalogue.load({ 'fitments.csv': text })
        const tables = dumpOf(catalogue.database)
        return { files, rejected, tables: written.map(name => tables[name]) }
      } catch {
        const problem = await problemOf(catalogue.load({ 'fitments.csv': text }))
        return { ...problem, file: 'fitments.csv' }
      } finally {
        catalogue.database.close()
      }
    }),
  )
}

const models = [
  'Ostrel,OW 4512/01',
  'Ostrel,OW 4512/02',
  'Ostrel,ow4530.01',
  'Brennick,4821-07',
  ' Ostrel , OW 4530/01 ',
]
const oddModels = [
  'Ostrel,OW 45*',
  'Nobody,X 1',
  'Ostrel,XX 1',
  '"Ostrel","OW 4512/01"',
  ',',
  'Ostrel,"OW ""4512/01"',
]
const heads = [
  'includes,drain-pump,',
  'includes,,1E5',
  'excludes,drain-pump,',
  'includes,door-lock,',
  '"includes",drain-pump,',
]
const oddHeads = [
  'perhaps,drain-pump,',
  'includes,drain-pump,1E5',
  'includes,,',
  'includes,no-such,',
  'includes,"drain,pump",',
]
const tails = [
  ',1,List',
  'left,2,List',
  ',,Other list',
  ',2,List',
  '"left",1,"List"',
  ' , 1 , List ',
  ',1,"List, ""new"""',
]
const oddTails = [
  ',0,List',
  ',1,',
  ',1',
  ',1,List,more',
  ',1,Li"st',
  ',1,"Li"st',
  ',1,"open',
  'x"y,1,List',
  '"two\nlines",1,List',
  ',1,Caf\u00e9',
  ',1,\u{feff}List',
]
const ends = ['\n', '\n', '\n', '\r\n', '\r\n', '\n\n', '\r', '\r\n\r\n']

const weighted = (usual: readonly string[], odd: readonly string[]) =>
  fc.oneof(
    { weight: 12, arbitrary: fc.constantFrom(...usual) },
    { weight: 1, arbitrary: fc.constantFrom(...odd) },
  )
const row = fc
  .tuple(
    weighted(heads, oddHeads),
    weighted(models, oddModels),
    weighted(tails, oddTails),
    fc.constantFrom(...ends),
  )
  .map(([head, model, tail, end]) => `${head},${model},${tail}${end}`)

describe('lines read as bytes come to what the general reader makes of them', () => {
  test('whatever they hold: counts, rejected rows and every table', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(row, { maxLength: 30 }), fc.boolean(), async (rows, endsOpen) => {
        const list = endsOpen ? rows.join('').trimEnd() : rows.join('')
        const [plain, general] = await loadBothWays(list)
        expect(plain).toEqual(general)
      }),
      { numRuns: 60 },
    )
  }, 120_000)

  test('wherever a byte of theirs is damaged', async () => {
    const sound = heads.flatMap(head => models.map(model => `${head},${model},,1,List\n`)).join('')
    await fc.assert(
      fc.asyncProperty(fc.nat(sound.length - 1), fc.nat(255), async (at, byte) => {
        const list = Buffer.from(sound)
        list[at] = byte
        const [plain, general] = await loadBothWays(list)
        expect(plain).toEqual(general)
      }),
      { numRuns: 40 },
    )
  }, 120_000)

  test('in whichever order the columns stand', async () => {
    await fc.assert(
      fc.asyncProperty(fc.shuffledSubarray(columns, { minLength: columns.length }), async order => {
        const cells = ['includes', 'drain-pump', '', 'Ostrel', 'OW 4512/01', 'left', '1', 'List']
        const other = ['includes', '', '1E5', 'Brennick', '4821-07', '', '2', 'List']
        const rows = [cells, other, cells, other.with(4, 'XX')]
        const list = rows.map(each => order.map(column => each[columns.indexOf(column)]).join())
        const [plain, general] = await loadBothWays(`${list.join('\n')}\n`, order.join())
        expect(plain).toEqual(general)
        expect(plain).toMatchObject({ files: [{ added: 2, unchanged: 1, rejected: 1 }] })
      }),
      { numRuns: 20 },
    )
  }, 60_000)

  test('over more lines than are read at once, with the mark of UTF-8 before them', async () => {
    const rows = Array.from(
      { length: 20_000 },
      (_, at) => `${heads[at % 2]},${models[at % 4]},,1,List ${at % 700}\n`,
    )
    const [plain, general] = await loadBothWays(rows.join(''), `\u{feff}${columns.join()}`)
    expect(plain).toMatchObject({ files: [{ rejected: 0 }], rejected: [] })
    expect(plain).toEqual(general)
  }, 60_000)
})
