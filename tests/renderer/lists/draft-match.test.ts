import { expect, test } from 'vitest'
import {
  emptyColumn,
  emptyMatch,
  layoutOf,
  listUnfilled,
  type ProposedColumn,
  readWords,
  setMatch,
  takeAll,
  writeWords,
} from '../../../renderer/lists/supplier/draft-match.ts'
import type { LayoutProposal, Shape } from '../../../shared-schemas/supplier-layouts.ts'

const proposed = (column: string, heading: string | null, needed = false): ProposedColumn => ({
  ...{ column, needed, holds: 'text', takes: [], heading, certainty: 'likely', why: '' },
  ...{ decimalSign: null, thousands: false, dateOrder: null, samples: [] },
})

const columns = [
  proposed('source', null, true),
  proposed('part_number', 'Artikel', true),
  proposed('model_number', 'Modelle'),
]

const proposalOf = (shape: Shape): LayoutProposal => ({
  ...{ feeds: 'fitments.csv', targets: [], columns, unmatched: [], shape, headings: ['Artikel', 'Modelle'] },
  reading: { encoding: null, separator: null, sheet: null, headerRow: 1 },
})

const long: Shape = { kind: 'long' }
const wide: Shape = { kind: 'wide-cell', column: 'model_number', heading: 'Modelle', separators: [';'] }
const filled = (match: typeof emptyMatch) => match.columns.map(({ column, heading }) => [column, heading])

test('taking all fills what is empty, and leaves what a person chose', () => {
  const chosen = setMatch(emptyMatch, 'part_number', { ...emptyColumn('part_number'), heading: 'Modelle' })
  expect(filled(takeAll(chosen, proposalOf(long)))).toEqual([
    ['part_number', 'Modelle'],
    ['model_number', 'Modelle'],
  ])
})

test('a column that many models of one row fill is not filled a second time', () => {
  const taken = takeAll(emptyMatch, proposalOf(wide))
  expect(filled(taken)).toEqual([['part_number', 'Artikel']])
  expect(taken.shape).toEqual(wide)
})

test('what no row can do without is named until it is filled, and an empty cell fills nothing', () => {
  const constant = (text: string) =>
    setMatch(emptyMatch, 'source', { ...emptyColumn('source'), constant: text })
  expect(listUnfilled(emptyMatch, columns)).toEqual(['source', 'part_number'])
  expect(listUnfilled(constant(''), columns)).toEqual(['source', 'part_number'])
  expect(listUnfilled(constant('Quillby'), columns)).toEqual(['part_number'])
  const { reading, headings } = proposalOf(long)
  const parts = { name: 'Quillby', feeds: 'fitments.csv', reading, headings }
  expect(layoutOf(constant(''), parts).columns).toEqual([])
})

test('their words for ours are written as they are read, and half a pair is none yet', () => {
  const words = readWords('OEM = genuine, AM=pattern, x =')
  expect(words).toEqual([
    { theirs: 'OEM', ours: 'genuine' },
    { theirs: 'AM', ours: 'pattern' },
  ])
  expect(readWords(writeWords(words))).toEqual(words)
})
