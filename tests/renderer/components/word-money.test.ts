import { expect, test } from 'vitest'
import { wordMoney } from '../../../renderer/components/word-money.ts'

test.each([
  ['12.50', 'GBP', '£12.50'],
  ['999', 'GBP', '£999'],
  ['1000.00', 'EUR', '€1,000.00'],
  ['1234567.8901', 'GBP', '£1,234,567.8901'],
  ['-1200.5', 'GBP', '−£1,200.5'],
  ['3', 'CHF', 'CHF3'],
])('%s in %s is written %s', (price, currency, words) => expect(wordMoney({ price, currency })).toBe(words))
