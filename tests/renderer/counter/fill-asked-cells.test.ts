import { expect, test } from 'vitest'
import { fillAskedCells } from '../../../renderer/counter/fill-asked-cells.ts'
import { drawPlateCells } from '../../../renderer/counter/plate-cells.ts'
import { makeCandidate } from '../../builders/model-candidate.ts'

const open = ['ODW4530/01', 'ODW4530/12'].map(number => makeCandidate(number))
const same = ['ODW4530/01', 'ODW4530/02'].map(number => makeCandidate(number))

interface Given {
  readonly typed: string
  readonly candidates?: readonly ReturnType<typeof makeCandidate>[]
  readonly asked: readonly number[]
  readonly value: string
}

const check = ({ typed, candidates = same, asked, value }: Given, expected: string | undefined) =>
  expect(
    fillAskedCells(
      drawPlateCells({
        typed,
        found: { setAside: [], candidates: [...candidates], openModels: candidates.length },
        pointedAt: null,
        asked,
      }),
      value,
    ),
  ).toBe(expected)

test('the value follows what was typed, the shared character between them filled', () => {
  check({ typed: 'ODW4530', asked: [9], value: '2' }, 'ODW4530/02')
})

test('a character between them that is not known is written as unreadable', () => {
  check({ typed: 'ODW4530', candidates: open, asked: [9], value: '2' }, 'ODW4530/?2')
})

test('what comes after the last asked cell and was not typed is left off', () => {
  check({ typed: 'ODW4530', candidates: open, asked: [8], value: '1' }, 'ODW4530/1')
})

test('an unreadable character takes the value; what was typed after it stays', () => {
  check(
    {
      typed: '1x8?z',
      candidates: ['1X80Z', '1X8OZ'].map(number => makeCandidate(number)),
      asked: [4],
      value: 'O',
    },
    '1x8Oz',
  )
})

test('two asked cells take two characters', () => {
  check({ typed: 'ODW4530', candidates: open, asked: [8, 9], value: '1 2' }, 'ODW4530/12')
})

test('the number takes the place of a sales name', () => {
  const covered = same.map(model => ({ ...model, matched: 'sales-name' as const }))
  check({ typed: 'Aqualane', candidates: covered, asked: [9], value: '2' }, 'ODW4530/02')
})

test('a value that is no character for each asked cell fills nothing', () => {
  check({ typed: 'ODW4530', asked: [9], value: '–' }, undefined)
  check({ typed: 'ODW4530', asked: [8, 9], value: '2' }, undefined)
  check({ typed: 'ODW4530', asked: [9], value: 'ODW4530/02' }, undefined)
  check({ typed: 'ODW4530', asked: [], value: '2' }, undefined)
})
