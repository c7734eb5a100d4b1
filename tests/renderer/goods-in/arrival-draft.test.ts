import { expect, test } from 'vitest'
import {
  changeLine,
  countScan,
  listArrivals,
  nothingCame,
  wordStanding,
} from '../../../renderer/goods-in/arrival-draft.ts'
import type { SheetLine } from '../../../shared-schemas/order-sheets.ts'

function lineOf(line: number, partNumber: string, toCome: number): SheetLine {
  const nothing = { brand: null, modelNumber: null, made: null, serial: null, job: null, customer: null }
  return {
    ...{ line, partNumber, toCome, quantity: toCome, description: '', supplierCode: null, pack: 1 },
    ...{ unitPrice: '1', amount: '1', for: nothing, received: 0, damaged: 0, closed: 0, overrides: [] },
  }
}
const lines = [lineOf(1, 'P-100', 2), lineOf(2, 'S-2', 1), lineOf(3, 'P-100', 1)]

function scan(parts: readonly string[], condition: 'good' | 'damaged' = 'good') {
  return parts.reduce(
    (draft, partNumber) => countScan(draft, lines, { partNumber, pieces: 1, condition })?.draft ?? draft,
    nothingCame,
  )
}

test('scans fill the first line that lacks some, then the next, then go over on the last', () => {
  const counts = (many: number) =>
    listArrivals(scan(Array<string>(many).fill('P-100'))).map(({ line, quantity }) => [line, quantity])
  expect(counts(2)).toEqual([[1, 2]])
  expect(counts(3)).toEqual([
    [1, 2],
    [3, 1],
  ])
  expect(counts(5)).toEqual([
    [1, 2],
    [3, 3],
  ])
})

test('a carton counts for all that is in it, and damaged pieces by themselves', () => {
  const carton = countScan(nothingCame, lines, { partNumber: 'S-2', pieces: 12, condition: 'good' })
  expect(carton).toMatchObject({ line: { line: 2 }, counted: 12 })
  expect(listArrivals(scan(['S-2'], 'damaged'))).toEqual([{ line: 2, quantity: 1, condition: 'damaged' }])
})

test('a part on no line is told apart', () => {
  expect(countScan(nothingCame, lines, { partNumber: 'K-9', pieces: 1, condition: 'good' })).toBeUndefined()
})

test('prices go with their line, and what is no number is told with its line', () => {
  const draft = changeLine(nothingCame, 2, { good: '1', damaged: '2', paid: '2,40' })
  expect(listArrivals(draft)).toEqual([
    { line: 2, quantity: 1, condition: 'good', unitPrice: '2.40' },
    { line: 2, quantity: 2, condition: 'damaged', unitPrice: '2.40' },
  ])
  expect(() => listArrivals(changeLine(nothingCame, 2, { good: 'two' }))).toThrow(
    'Line 2: “two” is no number',
  )
  expect(listArrivals(changeLine(nothingCame, 2, { good: '0' }))).toEqual([])
})

test.each([
  ['', '2 to come'],
  ['1', '1 short'],
  ['2', 'all of it'],
  ['5', '3 more than is due'],
])('a line of two of which “%s” came: %s', (good, expected) => {
  expect(wordStanding(lines[0] as SheetLine, changeLine(nothingCame, 1, { good }))).toBe(expected)
})

test('a substitute counts for its line', () => {
  const substitute = { line: 2, part: 'S-1', quantity: 1, paid: '', because: 'same belt' }
  const draft = { ...nothingCame, substitutes: [substitute] }
  expect(wordStanding(lines[1] as SheetLine, draft)).toBe('all of it')
  expect(listArrivals(draft)).toEqual([{ line: 2, part: 'S-1', quantity: 1, takenBecause: 'same belt' }])
})
