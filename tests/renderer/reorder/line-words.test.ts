import { expect, test } from 'vitest'
import { addAmounts } from '../../../renderer/reorder/add-amounts.ts'
import { figure, wordArithmetic } from '../../../renderer/reorder/line-words.ts'
import type { ProposedLine } from '../../../shared-schemas/proposal.ts'

const line: ProposedLine = {
  ...{ partNumber: 'B-200', description: 'Belt', quantity: 15, need: 11, unitPrice: '1.00', amount: '15.00' },
  ...{ supplierCode: null, pack: 5, instead: [], shortWithout: 3.2, elsewhere: [], flags: [] },
  position: { onShelf: 2, vanSpare: 1, vanShort: 3, reserved: 1, onOrder: 0, onSheets: 0, available: -1 },
  level: {
    ...{
      demandClass: 'lumpy',
      valueClass: 'A',
      life: 'current',
      meanPerBucket: 2.13,
      deviationPerBucket: 1.4,
    },
    ...{ reorderPoint: 4, orderUpTo: 10, lot: 1, expectedFillRate: 0.953, cycleService: 0.971 },
    ...{ leadDays: 3, leadDaysDeviation: 1, leadTimeFrom: 'deliveries' },
  },
}

function check(given: Partial<ProposedLine>, expected: string): void {
  const told = { supplierName: 'Dale Spares', bucket: 'week', reviewDays: 7 } as const
  expect(wordArithmetic({ ...line, ...given }, told)).toContain(expected)
}

test.each<[Partial<ProposedLine>, string]>([
  [
    {},
    'In the shop 2, kept for or awaited by jobs and customers 1, to be brought back from vans 1, missing in vans 3, on order 0: 1 owed.',
  ],
  [{}, 'About 2.1 a week are asked for, give or take 1.4; now and then, and in very different numbers.'],
  [{}, 'Dale Spares takes 3 days (by its deliveries), and the next order is 7 days off.'],
  [
    {},
    'It is ordered at 4 or fewer, up to 10: 10 less -1, so 11 pieces. Ordered 15: in packs of 5, or for a lower price.',
  ],
  [
    { instead: [{ partNumber: 'B-201', kind: 'pattern', quantity: 4, isDead: true }], need: 7, quantity: 7 },
    'It is ordered at 4 or fewer, up to 10: 10 less -1 less 4 used instead, so 7 pieces.',
  ],
  [
    { instead: [{ partNumber: 'B-201', kind: 'pattern', quantity: 1, isDead: true }] },
    '1 piece of B-201 (pattern, not asked for in two years) in the shop: used first.',
  ],
  [{ level: { ...line.level, demandClass: 'none' } }, 'Nobody has asked for it so far.'],
  [
    { level: { ...line.level, orderUpTo: 0, reorderPoint: 0 }, need: 1, quantity: 1 },
    'None is kept; 1 piece is promised.',
  ],
])('%o is worded: %s', check)

test('figures are as exact as they need be', () => {
  expect([0.0712, 2.13, 12.6, 3].map(figure)).toEqual(['0.07', '2.1', '13', '3'])
})

test('amounts are added exactly, whatever their decimals', () => {
  expect(addAmounts(['0.10', '0.20', '0.0001'])).toBe('0.3001')
  expect(addAmounts([])).toBe('0.00')
  expect(addAmounts(['-1.50', '0.25'])).toBe('-1.25')
})
