import { expect, test } from 'vitest'
import { wordOnOrder } from '../../../renderer/shelves/shelf-words.ts'

test('what is on order is told sheet by sheet, and that nothing is', () => {
  const due = {
    partNumber: '1E5',
    number: '2026-0007',
    supplier: 'DALE',
    quantity: 4,
    sentAt: '2026-11-23T09:00:00.000Z',
  }
  expect(wordOnOrder([])).toBe('None on order.')
  expect(wordOnOrder([due, { ...due, number: '2026-0009', supplier: 'HOLM', quantity: 1 }])).toBe(
    'On order: 4 on 2026-0007 from DALE, sent 2026-11-23; 1 on 2026-0009 from HOLM, sent 2026-11-23.',
  )
})
