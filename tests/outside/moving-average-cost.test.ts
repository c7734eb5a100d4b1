import { expect, test } from 'vitest'
import { reckonCost } from '../../electron/stock-ledger/stock-value.ts'

/**
 * Moving weighted average by hand, as accounting textbooks set it out (perpetual inventory, weighted average; the formula
 * is IAS 2 paragraph 27, the figures are written from memory of the usual exercise): 100 pieces at 10.00, then 100 at
 * 12.00 make 11.00; 150 leave at 11.00; then 50 at 14.00 on the 50 left make 12.50.
 */
test('each receipt makes a new average, and what leaves goes at it', () => {
  const events = [
    { quantity: 100, unitCost: '10.00' },
    { quantity: 100, unitCost: '12.00' },
    { quantity: -150, unitCost: null },
    { quantity: 50, unitCost: '14.00' },
  ]
  const averages = events.map((_, at) => reckonCost(events.slice(0, at + 1)).average?.toFixed(2))
  expect(averages).toEqual(['10.00', '11.00', '11.00', '12.50'])
  expect(reckonCost(events).last?.toFixed(2)).toBe('14.00')
})

test('thirds stay exact until they are written', () => {
  const { average } = reckonCost([
    { quantity: 1, unitCost: '0.10' },
    { quantity: 2, unitCost: '0.20' },
  ])
  // (0.10 + 2 x 0.20) / 3 = 0.1666…, where binary fractions would begin with 0.5000000000000001 / 3.
  expect(average?.times(3).round(10).toString()).toBe('0.5')
})

test('a part that was used before it was booked begins anew with its receipt', () => {
  const { average } = reckonCost([
    { quantity: -2, unitCost: null },
    { quantity: 5, unitCost: '4.00' },
  ])
  expect(average?.toFixed(2)).toBe('4.00')
})

test('nothing paid is nothing known', () => {
  expect(reckonCost([{ quantity: 3, unitCost: null }])).toEqual({ last: null, average: null })
})
