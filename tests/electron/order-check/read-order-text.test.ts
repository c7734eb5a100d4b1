import { expect, test } from 'vitest'
import { readOrderText } from '../../../electron/order-check/read-order-text.ts'
import type { OrderLine } from '../../../shared-schemas/order-check.ts'

/** Either the lines, or what the problem's `why` or header faults say. */
function check(text: string, expected: readonly OrderLine[] | RegExp): void {
  const read = readOrderText({ text, name: 'order.csv' })
  if (expected instanceof RegExp) expect(JSON.stringify(read)).toMatch(expected)
  else expect(read).toEqual({ ok: true, value: expected })
  expect(read.ok).toBe(!(expected instanceof RegExp))
}

const row = (line: number, partNumber: string, quantity?: string): OrderLine => ({
  line,
  partNumber,
  ...(quantity === undefined ? {} : { quantity }),
})

test.each<[string, string, readonly OrderLine[]]>([
  ['a header and a row', 'part_number,quantity\n00480121,2\n', [row(2, '00480121', '2')]],
  [
    'columns in any order, named as people name them',
    'Serial,Model Number,QUANTITY,Part number\r\n77,QV-1042/A,1,P-100\r\n',
    [{ ...row(2, 'P-100', '1'), modelNumber: 'QV-1042/A', serial: '77' }],
  ],
  ['rows pasted from a spreadsheet', 'P-100\t2\nP-101\t\n', [row(1, 'P-100', '2'), row(2, 'P-101')]],
  [
    'pasted with its header',
    'part_number\tquantity\tbrand\tmodel_number\nP-100\t1\tQuorvane\tQV 1042, A\n',
    [{ ...row(2, 'P-100', '1'), brand: 'Quorvane', modelNumber: 'QV 1042, A' }],
  ],
  ['numbers alone', 'P-100\nP-101\n', [row(1, 'P-100'), row(2, 'P-101')]],
  ['semicolons', 'part_number;quantity\nP-100;1,5\n', [row(2, 'P-100', '1,5')]],
  ['a byte order mark', '\ufeffpart_number,quantity\nP-100,1\n', [row(2, 'P-100', '1')]],
  [
    'empty lines are no lines, and the others keep their place',
    '\npart_number,quantity\n\nP-100,1\n,\nP-101,1\n',
    [row(4, 'P-100', '1'), row(6, 'P-101', '1')],
  ],
  [
    // RFC 4180, section 2, rule 6: a line break inside quotation marks belongs to the cell.
    'a cell with a line end counts its lines',
    'part_number,quantity\n"P-\n100",1\nP-101,1\n',
    [row(2, 'P-\n100', '1'), row(4, 'P-101', '1')],
  ],
  // RFC 4180, section 2, rule 7: a quotation mark inside quotation marks is written twice.
  ['a quotation mark in a cell', 'part_number,quantity\n"3/4"" hose",1\n', [row(2, '3/4" hose', '1')]],
  ['a line without a part number stays a line', 'part_number,quantity\n,3\n', [row(2, '', '3')]],
  ['empty columns at the end are none', 'part_number,quantity,,\nP-100,1,,\n', [row(2, 'P-100', '1')]],
])('%s', (_title, text, expected) => check(text, expected))

test.each<[string, string, RegExp]>([
  ['an empty text', '', /no line of an order stands in it/],
  ['a header alone', 'part_number,quantity\n', /no line of an order stands under its header/],
  ['another heading', 'part_number,qty\nP-100,1\n', /wrong-header.*"unknown":\["qty"\]/],
  [
    'headings that are not known at all',
    'Artikel,Menge\nP-100,1\n',
    /"unknown":\["Artikel","Menge"\],"missing":\["part_number"\]/,
  ],
  ['no part number', 'quantity,brand\n1,Quorvane\n', /"missing":\["part_number"\]/],
  ['a column twice', 'part_number,quantity,quantity\nP-100,1,2\n', /"repeated":\["quantity"\]/],
  ['three columns without names', 'P-100,1,Quorvane\n', /wrong-header/],
  ['a cell too many', 'part_number,quantity\nP-100,1,000\n', /line 2 has 3 cells where 2 are named/],
  [
    'a quotation mark that is not closed',
    'part_number,quantity\n"P-100,1\n',
    /quotation mark in row 2 is not closed/,
  ],
  ['more lines than one check takes', `part_number\n${'P-100\n'.repeat(10_001)}`, /10,001 lines/],
])('%s is refused', (_title, text, expected) => check(text, expected))
