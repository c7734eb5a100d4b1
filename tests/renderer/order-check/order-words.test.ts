import { expect, test } from 'vitest'
import { nextStop, wordFindings, wordOrder } from '../../../renderer/order-check/order-words.ts'
import type { CheckedLine, Severity } from '../../../shared-schemas/order-check.ts'

const lineWith = (line: number, ...found: readonly Severity[]): CheckedLine => ({
  line,
  partNumber: 'P-1',
  quantity: 1,
  verdict: null,
  flags: found.map(severity => ({ code: severity, severity, text: severity })),
  description: null,
  orderNumber: 'P-1',
  model: null,
  moves: [],
})

const order = [lineWith(2), lineWith(4, 'stop', 'note'), lineWith(5, 'caution'), lineWith(9, 'stop', 'stop')]

test.each<[number | null, number]>([
  [null, 4],
  [2, 4],
  [4, 9],
  [5, 9],
  [9, 4],
])('after line %s the next stop is on line %s', (open, expected) => {
  expect(nextStop(order, open)?.line).toBe(expected)
})

test('an order without stops has no next one', () => {
  expect(nextStop([lineWith(2, 'caution')], null)).toBeUndefined()
})

test.each<[CheckedLine, Severity, string]>([
  [lineWith(1), 'stop', ''],
  [lineWith(1, 'stop'), 'stop', '1 stop'],
  [lineWith(1, 'note', 'stop', 'note'), 'note', '2 notes'],
])('findings in words', (line, severity, expected) => {
  expect(wordFindings(line, severity)).toBe(expected)
})

test.each([
  [{ stops: 2, cautions: 1 }, '4 lines: 2 stops, 1 caution. Mend the stops before the order is sent.'],
  [
    { stops: 0, cautions: 1 },
    '4 lines: 0 stops, 1 caution. Nothing stops this order; look at the cautions first.',
  ],
  [{ stops: 0, cautions: 0 }, '4 lines: 0 stops, 0 cautions. Nothing stops this order.'],
])('%j', (counts, expected) => {
  expect(wordOrder({ lines: order, notes: 0, ...counts })).toBe(expected)
})
