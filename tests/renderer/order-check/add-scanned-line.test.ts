import { describe, expect, test } from 'vitest'
import { readOrderText } from '../../../electron/order-check/read-order-text.ts'
import { addScannedLine } from '../../../renderer/order-check/add-scanned-line.ts'

/** The lines as the check reads them, once these parts were scanned one after the other. */
function scan(text: string, ...parts: string[]) {
  const scanned = parts.reduce((before, part) => addScannedLine(before, part, 1), text)
  const read = readOrderText({ text: scanned, name: 'the order' })
  if (!read.ok) throw new Error(JSON.stringify(read.problem))
  return read.value.map(({ partNumber, quantity, brand }) =>
    [partNumber, quantity, brand].filter(cell => cell !== undefined).join(' '),
  )
}

describe('a scanned part', () => {
  const cases: [title: string, text: string, parts: string[], lines: string[]][] = [
    ['begins an empty order', '', ['P-100'], ['P-100 1']],
    ['begins one though its number has no figure', '  \n', ['SEAL'], ['SEAL 1']],
    [
      'scanned again is one more of it',
      '',
      ['P-100', 'P-100', 'L-2', 'P-100'],
      ['P-100 2', 'L-2 1', 'P-100 1'],
    ],
    [
      'goes under the columns of the order',
      'quantity;brand;part_number\n2;Quorvane;L-2\n',
      ['P-100'],
      ['L-2 2 Quorvane', 'P-100 1'],
    ],
    ['is one more where the columns stand otherwise', 'quantity\tpart_number\n', ['P-1', 'P-1'], ['P-1 2']],
    ['follows pasted rows without a header', '00480121\t3\n', ['00480121', 'P-9'], ['00480121 4', 'P-9 1']],
    [
      'does not count to a line that says for which appliance',
      'part_number,quantity,brand\nP-1,1,Quorvane\n',
      ['P-1'],
      ['P-1 1 Quorvane', 'P-1 1'],
    ],
    ['whose number holds the separator stays whole', 'part_number,quantity\n', ['A,1'], ['A,1 1']],
  ]
  test.each(cases)('%s', (_title, text, parts, lines) => expect(scan(text, ...parts)).toEqual(lines))
})
