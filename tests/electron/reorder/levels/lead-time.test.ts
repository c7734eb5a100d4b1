import { expect, test } from 'vitest'
import { estimateLeadTime, type LeadTimeFacts } from '../../../../electron/reorder/levels/lead-time.ts'

const plain: LeadTimeFacts = { given: undefined, stated: null, assumed: 7, delivered: [] }

function check(given: Partial<LeadTimeFacts>, expected: { days: number; deviation: number; from: string }) {
  const found = estimateLeadTime({ ...plain, ...given })
  expect(found.from).toBe(expected.from)
  expect(found.days).toBeCloseTo(expected.days, 9)
  expect(found.deviation).toBeCloseTo(expected.deviation, 9)
}

test('what is given counts, and is exact', () =>
  check({ given: 14, stated: 3, delivered: [9] }, { days: 14, deviation: 0, from: 'given' }))

test('without deliveries, the supplier’s word counts, a quarter of it off', () =>
  check({ stated: 8 }, { days: 8, deviation: 2, from: 'supplier' }))

test('a supplier that says nothing takes what is assumed', () =>
  check({}, { days: 7, deviation: 1.75, from: 'assumed' }))

// By hand: (3 x 4 + 10 + 10 + 10) / 6 = 7; variance (3 (1² + 3²) + 3 x 3²) / 6 = 9.5.
test('deliveries move it as many times over as there are of them', () =>
  check({ stated: 4, delivered: [10, 10, 10] }, { days: 7, deviation: Math.sqrt(9.5), from: 'deliveries' }))
