import { expect, test } from 'vitest'
import { addToDraft } from '../../../renderer/order-check/add-to-draft.ts'

function check(draft: string, expected: string): void {
  const line = { part: '00480121', quantity: 2, brand: 'Ostrel', model: 'ODW4512/01' }
  expect(addToDraft(draft, line)).toBe(expected)
}

test.each([
  [
    'an empty order gets its headings',
    '',
    'part_number,quantity,brand,model_number\r\n00480121,2,Ostrel,ODW4512/01\r\n',
  ],
  [
    'an order with headings gets the line in their order',
    'Model number;made;Part number\nX;;P-1\n',
    'Model number;made;Part number\nX;;P-1\r\nODW4512/01;;00480121\r\n',
  ],
  ['a pasted order of two columns stays one', 'P-1\t4', 'P-1\t4\r\n00480121\t2\r\n'],
])('%s', (_, draft, expected) => check(draft, expected))
