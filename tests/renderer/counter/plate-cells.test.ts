import { expect, test } from 'vitest'
import { drawPlateCells, type PlateCell, type PlateToDraw } from '../../../renderer/counter/plate-cells.ts'
import type { ModelCandidate } from '../../../shared-schemas/model-lookup.ts'
import { makeCandidate } from '../../builders/model-candidate.ts'

const suffixes = ['01', '02', '03'].map(suffix =>
  makeCandidate(`ODW4530/${suffix}`, {
    differences: [
      { at: 8, typed: '', catalogue: '0' },
      { at: 9, typed: '', catalogue: suffix.charAt(1) },
    ],
  }),
)
const found = (candidates: readonly ModelCandidate[], openModels = candidates.length) => ({
  setAside: [],
  candidates: [...candidates],
  openModels,
})

interface Case {
  readonly given: Partial<PlateToDraw>
  readonly stands: string
}

/** Read: the character. `[5]`: known but not typed. `[]`: open. `S>5`: two readings. `-S`: surplus. `*`: asked. `«»`: a word. */
const cases: Readonly<Record<string, Case>> = {
  'nothing typed: a blank plate': { given: { typed: '' }, stands: '[] [] [] [] [] [] [] [] []' },
  'before any answer every character stands as typed': {
    given: { typed: 'od-4?' },
    stands: 'o d - 4 ?',
  },
  'a whole number stands in cells, grouped as typed': {
    given: { typed: 'ODW4530/02', found: found([makeCandidate('ODW4530/02')], 1) },
    stands: 'O D W 4 5 3 0 / 0 2',
  },
  'typed without separators, the maker’s are put in': {
    given: { typed: 'odw453002', found: found([makeCandidate('ODW4530/02')], 1) },
    stands: 'o d w 4 5 3 0 / 0 2',
  },
  'what all open models share is known, the rest is open': {
    given: { typed: 'ODW4530', found: found(suffixes) },
    stands: 'O D W 4 5 3 0 / [0] []',
  },
  'not every open model is listed, so nothing may be called shared': {
    given: { typed: 'ODW4530', found: found(suffixes, 40) },
    stands: 'O D W 4 5 3 0 / [] []',
  },
  'a near model that is listed after the open ones changes nothing': {
    given: { typed: 'ODW4530', found: found([...suffixes, makeCandidate('ODW4599/99')], 3) },
    stands: 'O D W 4 5 3 0 / [0] []',
  },
  'the model pointed at fills the cells that were not typed': {
    given: { typed: 'ODW4530', found: found(suffixes), pointedAt: suffixes[1] ?? null },
    stands: 'O D W 4 5 3 0 / [0] [2]',
  },
  'a cell that is asked for is asked, never told': {
    given: { typed: 'ODW4530', found: found(suffixes), asked: [9] },
    stands: 'O D W 4 5 3 0 / [0] []*',
  },
  'an asked cell that was typed as unreadable stays unreadable': {
    given: {
      typed: '1X8?Z',
      found: found(['1X80Z', '1X8OZ'].map(number => makeCandidate(number))),
      asked: [4],
    },
    stands: '1 X 8 ?* Z',
  },
  'a character that the catalogue reads differently shows both': {
    given: {
      typed: 'ODW4S30/02',
      found: found(
        [makeCandidate('ODW4530/02', { differences: [{ at: 5, typed: 'S', catalogue: '5' }] })],
        1,
      ),
    },
    stands: 'O D W 4 S>5 3 0 / 0 2',
  },
  'one character too many is marked, one too few is known': {
    given: {
      typed: 'AAB12',
      found: found(
        [
          makeCandidate('AB-123', {
            differences: [
              { at: 2, typed: 'A', catalogue: '' },
              { at: 5, typed: '', catalogue: '3' },
            ],
          }),
        ],
        1,
      ),
    },
    stands: 'A -A B - 1 2 [3]',
  },
  'a piece from the middle stands in its place': {
    given: { typed: '4530', found: found(suffixes) },
    stands: '[O] [D] [W] 4 5 3 0 / [0] []',
  },
  'two characters that changed places differ, both': {
    given: {
      typed: 'BA1',
      found: found(
        [
          makeCandidate('AB1', {
            differences: [
              { at: 1, typed: 'B', catalogue: 'A' },
              { at: 2, typed: 'A', catalogue: 'B' },
            ],
          }),
        ],
        1,
      ),
    },
    stands: 'B>A A>B 1',
  },
  'a label and a maker are print, not cells': {
    given: {
      typed: 'MOD. X1 Ostrel',
      found: {
        setAside: [
          { word: 'MOD.', as: 'label' },
          { word: 'Ostrel', as: 'brand' },
        ],
        candidates: [makeCandidate('X1')],
        openModels: 1,
      },
    },
    stands: '«M» «O» «D» «.»   X 1   «O» «s» «t» «r» «e» «l»',
  },
  'a sales name stands before the number that it covers': {
    given: {
      typed: 'A45',
      found: found(suffixes.map(model => ({ ...model, matched: 'sales-name' as const, differences: [] }))),
      asked: [9],
    },
    stands: '‹A› ‹4› ‹5› [O] [D] [W] [4] [5] [3] [0] / [0] []*',
  },
  'an answer to the last keystroke but one draws no wrong comparison': {
    given: {
      typed: 'ODW4530/0',
      found: found([makeCandidate('XYZ', { differences: [{ at: 1, typed: 'O', catalogue: 'X' }] })], 1),
    },
    stands: 'O D W 4 5 3 0 / 0',
  },
}

test.each(Object.entries(cases))('%s', (_, { given, stands }) => {
  const cells = drawPlateCells({ typed: '', found: null, pointedAt: null, asked: [], ...given })
  expect(cells.map(writeCell).join(' ')).toBe(stands)
})

test('every typed character stands on the plate once, in its order', () => {
  for (const { given } of Object.values(cases)) {
    const cells = drawPlateCells({ typed: '', found: null, pointedAt: null, asked: [], ...given })
    const places = cells.flatMap(({ typedAt }) => (typedAt === null ? [] : [typedAt]))
    expect(places).toEqual(Array.from({ length: given.typed?.length ?? 0 }, (_, at) => at))
  }
})

function writeCell(cell: PlateCell): string {
  if (cell.kind !== 'character')
    return { word: `«${cell.text}»`, name: `‹${cell.text}›`, separator: cell.text }[cell.kind]
  const { mark, typed, catalogue } = cell
  const written = {
    read: typed,
    unreadable: typed,
    differs: `${typed}>${catalogue}`,
    surplus: `-${typed}`,
    known: `[${catalogue}]`,
    open: '[]',
  }[mark]
  return `${written}${cell.isAsked ? '*' : ''}`
}
