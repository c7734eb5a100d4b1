import { expect, test } from 'vitest'
import {
  type BuildingFacts,
  gatherLines,
  type OfferOnRecord,
  type WantedPart,
} from '../../../../electron/reorder/proposal/gather-lines.ts'

const supplier = (name: string, currency: string) => ({
  ...{ supplier: name, name, currency, minimumOrder: null, carriage: '5.00', carriagePaidFrom: null },
})
const offer = (name: string, price: string, fromQuantity = 1): OfferOnRecord => ({
  ...{ supplier: name, supplierCode: null, price, fromQuantity, pack: 1, minimum: 1 },
})

const facts: BuildingFacts = {
  suppliers: [supplier('DALE', 'GBP'), supplier('HOLM', 'GBP'), supplier('VELD', 'EUR')],
  offers: new Map(),
  preferred: new Map(),
  budget: null,
  holdingRate: 0.25,
  yearlyOf: () => 12,
  aheadOf: () => ({ mean: 2, deviation: 1 }),
}

/** A part of which three are to be ordered, none being there. */
const wanted = {
  ...{ partId: 1, partNumber: 'P-1', pieces: 3, instead: [], shelfLimit: null, position: { position: 0 } },
} as unknown as WantedPart

test('a part goes to the currency of most suppliers where it is offered in it, else to the other', () => {
  const parts = [wanted, { ...wanted, partId: 2, partNumber: 'P-2' }]
  const offers = new Map([
    [1, [offer('DALE', '8.00'), offer('VELD', '7.00')]],
    [2, [offer('VELD', '7.00')]],
  ])
  const problems = gatherLines(parts, { ...facts, offers })
  expect(
    problems.map(({ currency, lines }) => [
      currency,
      lines.map(({ lineId, offers: usable }) => [lineId, usable.length]),
    ]),
  ).toEqual([
    ['GBP', [['P-1', 1]]],
    ['EUR', [['P-2', 1]]],
  ])
})

test('the budget holds for the currency of most suppliers alone', () => {
  const offers = new Map([[1, [offer('VELD', '7.00')]]])
  expect(gatherLines([wanted], { ...facts, offers, budget: '50.00' })[0]?.budget).toBeNull()
})

test('the preferred supplier alone is asked, unless it does not offer the part', () => {
  const offers = new Map([[1, [offer('DALE', '8.00'), offer('HOLM', '9.00')]]])
  const suppliersOf = (preferred: string) =>
    gatherLines([wanted], {
      ...facts,
      offers,
      preferred: new Map([[1, preferred]]),
    })[0]?.lines[0]?.offers.map(found => found.supplier)
  expect(suppliersOf('HOLM')).toEqual(['HOLM'])
  expect(suppliersOf('VELD')).toEqual(['DALE', 'HOLM'])
})

test('two months more may be taken for a lower price, but never more than the shelf holds', () => {
  const offers = new Map([[1, [offer('DALE', '8.00'), offer('DALE', '7.00', 10)]]])
  const mostOf = (shelfLimit: number | null) =>
    gatherLines([{ ...wanted, shelfLimit }], { ...facts, offers })[0]?.lines[0]?.most
  expect(mostOf(null)).toBe(5)
  expect(mostOf(4)).toBe(4)
  expect(mostOf(1)).toBe(3)
})

test('without any supplier the lines are still there, with no offer', () => {
  expect(gatherLines([wanted], { ...facts, suppliers: [] })[0]?.lines[0]?.offers).toEqual([])
})
