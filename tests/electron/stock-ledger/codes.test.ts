import { afterEach, beforeEach, expect, test } from 'vitest'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'

let shop: TestShop
beforeEach(async () => {
  shop = await openTestShop({
    'families.csv': 'family,name\nvalve,Valve\nbelt,Belt\n',
    'parts.csv':
      'part_number,family,kind,gtin\n480121,valve,genuine,2000010000005\n480130,valve,pattern,\n512200,belt,genuine,20000011\n',
    'cross_references.csv': 'number,part_number\nHR/5480,480130\n',
    'locations.csv': 'location,kind,name\nshop,shop,Shop\nvan-1,van,"Van 1, Otter"\n',
  })
})
afterEach(() => shop.close())

const find = async (code: string) => (await shop.answer('stock-ledger.find-code', { code })).found
const part = (partNumber: string, by: string, pieces = 1) =>
  expect.objectContaining({ partNumber, by, pieces })

test.each([
  ['its own number', '480-121', part('480121', 'number')],
  ['another number printed on it', 'hr5480', part('480130', 'number')],
  ['its EAN-13', '2000010000005', part('480121', 'gtin')],
  ['its EAN-8 in fourteen digits', ']C10100000020000011', part('512200', 'gtin')],
  ['its GTIN with a count', ']C1010200001000000530' + '4', part('480121', 'gtin', 4)],
  ['the customer’s number in a GS1-128', ']C1241480130', part('480130', 'number')],
  ['our label of it', '..P.480121', part('480121', 'number')],
])('a part is found by %s', async (_title, code, expected) => {
  expect(await find(code)).toEqual(expected)
})

test('a van is found by its label and by its name, and the undo label is told apart', async () => {
  const van = { kind: 'location', location: 'van-1', name: 'Van 1, Otter' }
  expect(await find('..L.VAN-1')).toEqual(van)
  expect(await find('van-1')).toEqual(van)
  expect(await find('..undo')).toEqual({ kind: 'undo' })
})

test('a code that nobody knows is unknown; one that was misread is not offered to be kept', async () => {
  expect(await find('9990000000')).toEqual({ kind: 'unknown', packOf: null })
  expect(await find(']E02000010000006')).toEqual({ kind: 'misread', why: 'check-digit' })
  expect(
    await shop.ask('stock-ledger.attach-code', { code: ']E02000010000006', part: '480121' }),
  ).toMatchObject({
    ok: false,
    problem: { code: 'code-not-attachable', why: 'misread' },
  })
})

test('the GTIN of a carton made of the part’s own names the part and takes nothing for granted', async () => {
  // Indicator 1, the same twelve digits, and the check digit that belongs to them (GS1 General Specifications,
  // on groupings of trade items; from memory, as to the section).
  expect(await find('12000010000002')).toEqual({ kind: 'unknown', packOf: '480121' })
  await shop.answer('stock-ledger.attach-code', { code: '12000010000002', part: '480121', pieces: 10 })
  expect(await find(']I112000010000002')).toEqual(part('480121', 'attached', 10))
})

test('an attached code stands for its part from then on, however it is sent', async () => {
  await shop.answer('stock-ledger.attach-code', { code: '6291041500213', part: 'hr5480', initials: 'AB' })
  expect(await find(']E06291041500213')).toEqual(part('480130', 'attached'))
  expect(await find(']C10106291041500213')).toEqual(part('480130', 'attached'))
  await shop.answer('stock-ledger.attach-code', { code: 'BAG 7', part: '512200' })
  expect(await find('BAG 7')).toEqual(part('512200', 'attached'))
})

test('a code of one part is not given to another unless it is said to be wrong', async () => {
  const wrong = { code: '2000010000005', part: '480130' }
  expect(await shop.ask('stock-ledger.attach-code', wrong)).toMatchObject({
    ok: false,
    problem: { code: 'code-of-another-part', partNumber: '480121' },
  })
  expect(await find('2000010000005')).toEqual(part('480121', 'gtin'))
  await shop.answer('stock-ledger.attach-code', { ...wrong, instead: true })
  expect(await find('2000010000005')).toEqual(part('480130', 'attached'))
})

test('a label of the shop is attached to no part', async () => {
  for (const code of ['..UNDO', '..L.van-1', 'van-1'])
    expect(await shop.ask('stock-ledger.attach-code', { code, part: '480121' })).toMatchObject({
      ok: false,
      problem: { code: 'code-not-attachable', why: 'label' },
    })
})
