import { expect, test } from 'vitest'
import { confirmPick, countPicks, joinPicks, type Pick } from '../../../renderer/vans/count-picks.ts'
import type { TopUp } from '../../../shared-schemas/van-counts.ts'

const line = { bin: null, wanted: 'valve', instead: false }
const inBin = (bin: string, partNumber: string, wanted = 'belt') => ({
  bin,
  partNumber,
  quantity: 1,
  from: 'shop',
  wanted,
  instead: false,
})
const topUp: TopUp = {
  van: 'van-1',
  lines: [
    { ...line, partNumber: 'P1', quantity: 2, from: 'shop' },
    { ...line, partNumber: 'P1', quantity: 1, from: 'store' },
  ],
  shortages: [],
  leftovers: [{ partNumber: 'P9', quantity: 1 }],
  spares: [],
}

/** Confirms pieces one after the other, and gives what was booked of them, or why not. */
function confirm(...parts: string[]) {
  let picks: readonly Pick[] = []
  let refused = ''
  for (const part of parts) {
    const confirmed = confirmPick(countPicks(topUp, picks), { part, pieces: 1, backTo: 'shop' })
    if (confirmed.ok) picks = [...picks, confirmed.pick]
    else refused = confirmed.why
  }
  return { picks: picks.map(({ location, way }) => `${way} ${location}`), refused }
}

test('pieces are confirmed place by place, and a leftover goes back to the shelf', () => {
  expect(confirm('P1', 'P1', 'P1', 'P9')).toEqual({
    picks: ['into-van shop', 'into-van shop', 'into-van store', 'back shop'],
    refused: '',
  })
})

test('one too many, and one that is not on the list, are refused with what to do', () => {
  expect(confirm('P1', 'P1', 'P1', 'P1').refused).toBe(
    'Of P1 the list asks for 3, and 3 are confirmed. Put it back.',
  )
  expect(confirm('P5').refused).toBe('P5 is not on this list. Put it back where it was.')
})

test('what was confirmed stands beside its own line', () => {
  const picks: Pick[] = [{ part: 'P1', quantity: 1, location: 'store', way: 'into-van' }]
  expect(countPicks(topUp, picks).map(({ from, picked }) => [from, picked])).toEqual([
    ['shop', 0],
    ['store', 1],
    [null, 0],
  ])
})

test('the list goes bin by bin, and a part that two lines ask for is picked once', () => {
  const lines = [inBin('A10', 'P2'), inBin('A2', 'P3'), inBin('A10', 'P2', 'P2')]
  const counted = countPicks({ ...topUp, lines, leftovers: [] }, [])
  expect(counted.map(({ part, bin, wanted, for: asked }) => [part, bin, wanted, asked])).toEqual([
    ['P3', 'A2', 1, 'belt'],
    ['P2', 'A10', 2, 'belt, P2'],
  ])
})

test('what was scanned piece by piece is booked as one line', () => {
  const pick = { part: 'P1', quantity: 1, location: 'shop', way: 'into-van' } as const
  expect(joinPicks([pick, { ...pick, way: 'back' }, pick])).toEqual([
    { ...pick, quantity: 2 },
    { ...pick, way: 'back' },
  ])
})
