import { expect, test } from 'vitest'
import { listChoices } from '../../../renderer/vans/list-choices.ts'
import { pairLines } from '../../../renderer/vans/pair-lines.ts'
import type { CountLine, Explanation } from '../../../shared-schemas/van-counts.ts'

const swap = (detail: string): Explanation => ({ kind: 'swap', detail, text: `booked as ${detail}` })
const line = (
  partNumber: string,
  proposed: Explanation[],
  settled: Explanation | null = null,
): CountLine => ({
  ...{ partNumber, family: 'valve', description: '', bin: null, readAt: null },
  ...{ book: 3, counted: 2, variance: -1, readings: 1, toRecount: true, isWithin: false },
  ...{ proposed, settled },
})
const partsOf = (...given: Parameters<typeof pairLines>) => pairLines(...given).map(({ part }) => part)

test('a swap settles both of its lines', () => {
  const [one, other] = [line('A', [swap('B')]), line('B', [swap('A')])]
  expect(pairLines(one, swap('B'), [one, other])).toEqual([
    { part: 'A', explanation: swap('B') },
    { part: 'B', explanation: swap('A') },
  ])
})

test('a line that was put down to something already keeps that', () => {
  const one = line('A', [swap('B')])
  const settled = line('B', [swap('A')], { kind: 'find', detail: '', text: 'found' })
  expect(partsOf(one, swap('B'), [one, settled])).toEqual(['A'])
})

test('a line that may be something else with a third is left to the person', () => {
  const one = line('A', [swap('B')])
  expect(partsOf(one, swap('B'), [one, line('B', [swap('C')])])).toEqual(['A'])
})

test('a job whose number is a part number settles no other line', () => {
  const one = line('A', [])
  expect(partsOf(one, { kind: 'job-line', detail: 'B', text: '' }, [one, line('B', [swap('A')])])).toEqual([
    'A',
  ])
})

test('an explanation by another line falls away once that one is put down to something else', () => {
  const mistaken: Explanation = { kind: 'digits', detail: 'B', text: '' }
  const job: Explanation = { kind: 'job-line', detail: 'J1', text: '' }
  const one = line('A', [mistaken, job])
  expect(listChoices(one, [one, line('B', [])])).toEqual([mistaken, job])
  expect(listChoices(one, [one, line('B', [], swap('C'))])).toEqual([job])
  expect(listChoices(one, [one, line('B', [], { ...mistaken, detail: 'A' })])).toEqual([mistaken, job])
})
