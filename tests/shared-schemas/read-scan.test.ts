import { expect, test } from 'vitest'
import { groupSeparator as gs } from '../../shared-schemas/gs1-elements.ts'
import { locationLabel, partLabel, readScan, type Scan, undoLabel } from '../../shared-schemas/read-scan.ts'

const check = (sent: string, expected: Scan) => expect(readScan(sent)).toEqual(expected)
const item = (gtin: string | null, more: Partial<Extract<Scan, { kind: 'trade-item' }>> = {}): Scan => ({
  kind: 'trade-item',
  gtin,
  numbers: [],
  pieces: null,
  ...more,
})

test.each<[string, string, Scan]>([
  ['our label that undoes', undoLabel, { kind: 'undo' }],
  ['our label of a van', locationLabel('van-1'), { kind: 'location-label', location: 'van-1' }],
  ['our label of a part', partLabel('00480121'), { kind: 'part-label', part: '00480121' }],
  ['a number that only begins like a label', '..UNDOING', { kind: 'plain', text: '..UNDOING' }],
  ['a part number', ' 11-19-246 ', { kind: 'plain', text: '11-19-246' }],
  ['Code 128 with its symbology', ']C0HR/5480', { kind: 'plain', text: 'HR/5480' }],
  [
    'a bare EAN-13, which might be a number too',
    '2000010000005',
    item('02000010000005', { numbers: ['2000010000005'] }),
  ],
  [
    'thirteen digits with another check digit are a number',
    '2000010000006',
    { kind: 'plain', text: '2000010000006' },
  ],
  ['an EAN-13 that was misread', ']E02000010000006', { kind: 'misread', why: 'check-digit' }],
  ['an EAN-13 that says so', ']E02000010000005', item('02000010000005')],
  ['ITF-14', ']I124012345678905', item('24012345678905')],
  [
    'a carton and what is in it',
    `]C1020200001000000537${12}${gs}10LOT7`,
    item('02000010000005', { pieces: 12 }),
  ],
  ['pieces by count', `]C1010200001000000530${5}`, item('02000010000005', { pieces: 5 })],
  [
    'the shop’s own number goes before the maker’s',
    `]C1240HR/5480${gs}24100480121`,
    item(null, { numbers: ['00480121', 'HR/5480'] }),
  ],
  ['a separator sent before the first fact', `${gs}0102000010000005`, item('02000010000005')],
  ['an element string without its symbology', `010200001000000510A${gs}21B`, item('02000010000005')],
  ['a string that breaks off', ']C10102000010', { kind: 'misread', why: 'elements' }],
  ['a count of none says nothing', ']C1010200001000000530' + '0', item('02000010000005')],
])('%s', (_title, sent, expected) => check(sent, expected))

test('reading twice is reading once, and any text at all is read without a fault', () => {
  for (const text of ['', ']', ']C', '\u001d', '..', '..L.', '..P. ', '01', '010', '\u001d\u001d'])
    expect(readScan(text)).toEqual(readScan(` ${text} `))
})
