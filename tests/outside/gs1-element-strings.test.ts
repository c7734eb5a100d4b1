import { expect, test } from 'vitest'
import { groupSeparator as gs, readElements } from '../../shared-schemas/gs1-elements.ts'
import { readScan } from '../../shared-schemas/read-scan.ts'

// What scanners send, as GS1's own Barcode Syntax Engine tests it (test_scandata_processScanData), and the formats that its
// Barcode Syntax Dictionary lists. Both are published by GS1 AISBL under the Apache License 2.0; lines are cited, not copied.

test.each([
  [`]C1011231231231233310ABC123${gs}99TESTING`, '12312312312333'],
  [`]d2011231231231233310ABC123${gs}99TESTING`, '12312312312333'],
  [`]Q3011231231231233310ABC123${gs}99TESTING`, '12312312312333'],
  [`]e0011231231231233310ABC123${gs}1199122598TESTING${gs}97XYZ`, '12312312312333'],
  [`]e0012401234567890599COMPOSITE${gs}98XYZ`, '24012345678905'],
  [']E02112345678900', '02112345678900'],
  [']E402345673', '00000002345673'],
])('%j is taken, as the engine takes it', (sent, gtin) => {
  expect(readScan(sent)).toMatchObject({ kind: 'trade-item', gtin })
})

test.each([
  [']C1', 'empty'],
  [']d2', 'empty'],
  [']e0', 'empty'],
  [']Q3', 'empty'],
  [']E012345678901234', 'too long'],
  [']E02112345678901', 'wrong check digit'],
  [']E402345674', 'wrong check digit'],
  [']E4123456789', 'too long'],
])('%j is refused, as the engine refuses it: %s', sent => {
  expect(readScan(sent)).toMatchObject({ kind: 'misread' })
})

test('twelve digits of UPC-A are taken, where the engine wants the zero before them: many scanners are set to drop it', () => {
  expect(readScan(']E0123456789012')).toMatchObject({ kind: 'trade-item', gtin: '00123456789012' })
})

test('a bare string with two separators, from a published guide to the General Specifications', () => {
  // “GS1 Data Example” of the GS1-AI-Validating-Parser wiki: GTIN, lot, expiry, serial; one separator, after the lot.
  expect(readElements(`010506091751001110628S93R${gs}17241000218898847482518646`)).toEqual([
    { identifier: '01', value: '05060917510011' },
    { identifier: '10', value: '628S93R' },
    { identifier: '17', value: '241000' },
    { identifier: '21', value: '8898847482518646' },
  ])
})

/** Format of each identifier: the dictionary's line. `*` needs no separator. */
const dictionary = [
  ['00', '*', 'N18,csum'],
  ['01', '*', 'N14,csum'],
  ['02', '*', 'N14,csum'],
  ['10', '', 'X..20'],
  ['11', '*', 'N6'],
  ['13', '*', 'N6'],
  ['15', '*', 'N6'],
  ['17', '*', 'N6'],
  ['20', '*', 'N2'],
  ['21', '', 'X..20'],
  ['240', '', 'X..30'],
  ['241', '', 'X..30'],
  ['242', '', 'N..6'],
  ['30', '', 'N..8'],
  ['3100', '*', 'N6'],
  ['37', '', 'N..8'],
  ['400', '', 'X..30'],
  ['410', '*', 'N13,csum'],
  ['414', '*', 'N13,csum'],
  ['420', '', 'X..20'],
] as const

test.each(dictionary)('%s%s is %s', (identifier, flag, format) => {
  const [, isNumeric, isUpTo, length = '0'] = /^(?:(N)|X)(\.\.)?(\d+)/.exec(format) ?? []
  const most = Number(length)
  const value = 'csum'.length > 0 && format.endsWith('csum') ? '0'.repeat(most) : '1'.repeat(most)
  expect(readElements(`${identifier}${value}`)).toEqual([{ identifier, value }])
  // One longer is refused where the length is not predefined; where it is, what follows is a further fact, or nothing sound.
  expect(readElements(`${identifier}${value}\u0001`)).toBeUndefined()
  if (flag === '') expect(readElements(`${identifier}${value}1`)).toBeUndefined()
  if (isUpTo === undefined) expect(readElements(`${identifier}${value.slice(1)}`)).toBeUndefined()
  else expect(readElements(`${identifier}1`)).toEqual([{ identifier, value: '1' }])
  if (isNumeric !== undefined) expect(readElements(`${identifier}${'A'.repeat(most)}`)).toBeUndefined()
  // Whether a separator is needed before the next fact.
  expect(readElements(`${identifier}${value}2007`)?.length).toBe(flag === '*' ? 2 : undefined)
  expect(readElements(`${identifier}${value}${gs}2007`)?.length).toBe(2)
})
