import { expect, test } from 'vitest'
import { flagPrice } from '../../../electron/order-check/flag-price.ts'
import { flagStock } from '../../../electron/order-check/flag-stock.ts'
import type { LineFacts, PaidPrice, SupplierOffer } from '../../../electron/order-check/line-facts.ts'
import { familyId, partId, partNumber } from '../../../shared-schemas/identifiers.ts'

/** A stock line of one piece of a part that nobody sells, pays for or has, but for what a case says. */
function lineWith(said: Partial<LineFacts>): LineFacts {
  return {
    given: { line: 1, partNumber: 'P-100' },
    quantity: { kind: 'stated', pieces: 1 },
    part: {
      partId: partId.parse(1),
      partNumber: partNumber.parse('P-100'),
      familyId: familyId.parse(1),
      family: 'pump',
      maker: 'Quorvane',
      kind: 'genuine',
      description: 'Drain pump',
    },
    nearest: [],
    dossier: undefined,
    appliance: { kind: 'none' },
    applianceName: '',
    judged: undefined,
    current: undefined,
    companions: [],
    records: [],
    offers: [],
    moves: [],
    openOrders: [],
    lastPaid: undefined,
    ...said,
  }
}

const offer = (price: string, changed: Partial<SupplierOffer> = {}): SupplierOffer => ({
  supplier: 'DALE',
  price,
  currency: 'GBP',
  fromQuantity: 1,
  pack: 1,
  minimum: 1,
  ...changed,
})
const paid = (price: string): PaidPrice => ({ price, currency: 'GBP' })

test.each<[string, Partial<LineFacts>, RegExp | 'nothing']>([
  ['a third more is not far', { offers: [offer('12.00')], lastPaid: paid('9.00') }, 'nothing'],
  [
    'a hair more is',
    { offers: [offer('12.0001')], lastPaid: paid('9.00') },
    /DALE asks 12\.0001 GBP .* paid was 9\.00/,
  ],
  ['a third less is not far', { offers: [offer('6.00')], lastPaid: paid('9.00') }, 'nothing'],
  ['a hair less is', { offers: [offer('5.9999')], lastPaid: paid('9.00') }, /asks 5\.9999/],
  [
    'the lowest that delivers counts',
    { offers: [offer('90'), offer('9.00')], lastPaid: paid('9.00') },
    'nothing',
  ],
  [
    'a price for a quantity that is not ordered does not',
    { offers: [offer('90'), offer('9.00', { fromQuantity: 10 })], lastPaid: paid('9.00') },
    /asks 90 /,
  ],
  [
    'figures in two currencies have no order',
    { offers: [offer('90', { currency: 'EUR' })], lastPaid: paid('9.00') },
    'nothing',
  ],
  ['nothing was paid yet', { offers: [offer('90')] }, 'nothing'],
])('price: %s', (_title, said, expected) => {
  const flags = flagPrice(lineWith(said), undefined)
  if (expected === 'nothing') expect(flags).toEqual([])
  else
    expect(flags).toEqual([{ code: 'price-far', severity: 'caution', text: expect.stringMatching(expected) }])
})

test('price: only the chosen supplier’s counts', () => {
  const line = lineWith({
    offers: [offer('90'), offer('9.00', { supplier: 'HOLM' })],
    lastPaid: paid('9.00'),
  })
  expect(flagPrice(line, 'DALE')).toHaveLength(1)
  expect(flagPrice(line, 'HOLM')).toEqual([])
})

test('an open order is named with its supplier', () => {
  const openOrders = [{ order: 'S-12', supplier: 'HOLM', quantity: 4 }]
  expect(flagStock(lineWith({ openOrders }))).toEqual([
    {
      code: 'on-open-order',
      severity: 'caution',
      text: 'On order already: 4 on S-12 from HOLM. Order more only if both are wanted.',
    },
  ])
})
