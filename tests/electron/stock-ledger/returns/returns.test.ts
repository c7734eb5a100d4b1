import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { GivenInput } from '../../../../shared-schemas/index.ts'
import { openTestShop, type TestShop } from '../../../builders/open-test-shop.ts'
import { orderShop } from '../../../builders/order-shop.ts'
import { refusalOf } from '../../../builders/refusal-of.ts'

let shop: TestShop
beforeEach(async () => {
  shop = await openTestShop(orderShop)
})
afterEach(() => shop.close())

const unused: GivenInput<'returns.take-return'> = {
  ...{
    kind: 'unused',
    part: 'P-100',
    from: 'customer',
    reference: 'card 17',
    reason: 'not needed after all',
  },
  initials: 'AB',
}
const take = (more: Partial<GivenInput<'returns.take-return'>> = {}) =>
  shop.answer('returns.take-return', { ...unused, ...more })
const decide = (returnId: string, more: Partial<GivenInput<'returns.decide-return'>>) =>
  shop.ask('returns.decide-return', { returnId, way: 'scrap', reason: 'as told', initials: 'AB', ...more })
async function onHand(part: string): Promise<Record<string, number>> {
  const { rows } = await shop.answer('stock-ledger.list-on-hand', { part })
  return Object.fromEntries(rows.map(({ location, quantity }) => [location, quantity]))
}
const undecided = async () => (await shop.answer('returns.list-returns', {})).returns

describe('a part that comes back', () => {
  test('goes into quarantine, where nobody is offered it, until it is decided', async () => {
    const back = await take({ quantity: 2 })
    expect(back).toMatchObject({
      quantity: 2,
      undecided: 2,
      from: 'customer',
      quarantine: 'BAD',
      decisions: [],
    })
    expect(await onHand('P-100')).toEqual({ SHOP: 3, VAN1: 1, BAD: 2 })
    const { families } = await shop.answer('fit-check.list-fitting-parts', {
      model: 'QV-1042/A',
      function: 'drain',
    })
    const offered = families.flatMap(({ parts }) => parts).find(({ partNumber }) => partNumber === 'P-100')
    expect(offered?.onHand.map(({ location }) => location)).toEqual(['SHOP', 'VAN1'])
  })

  test('to a shelf, to the supplier and into the scrap: each decision is a movement with its reason', async () => {
    const { returnId } = await take({ quantity: 3 })
    await decide(returnId, { way: 'to-shelf', quantity: 1, to: 'shop', reason: 'sealed bag' })
    await decide(returnId, { way: 'to-supplier', quantity: 1, reason: 'credit asked', reference: 'RMA 5' })
    const last = await decide(returnId, { way: 'scrap', reason: 'broken' })
    expect(last.ok && last.value).toMatchObject({ undecided: 0 })
    expect(await undecided()).toEqual([])
    const { returns } = await shop.answer('returns.list-returns', { state: 'all' })
    expect(
      returns[0]?.decisions.map(({ way, quantity, to, reason, reference }) => [
        way,
        quantity,
        to,
        reason,
        reference,
      ]),
    ).toEqual([
      ['to-shelf', 1, 'SHOP', 'sealed bag', null],
      ['to-supplier', 1, 'supplier', 'credit asked', 'RMA 5'],
      ['scrap', 1, 'scrap', 'broken', null],
    ])
    expect(await onHand('P-100')).toEqual({ SHOP: 4, VAN1: 1 })
  })

  test('is decided about once, and no more of it than came', async () => {
    const { returnId } = await take({ quantity: 2 })
    expect(await refusalOf(decide(returnId, { quantity: 3 }))).toMatchObject({
      code: 'return-has-fewer',
      undecided: 2,
      wanted: 3,
    })
    expect(await refusalOf(decide(returnId, { way: 'to-shelf' }))).toEqual({ code: 'shelf-needed', returnId })
    await decide(returnId, {})
    expect(await refusalOf(decide(returnId, {}))).toEqual({ code: 'return-decided', returnId })
    expect(await refusalOf(decide('0190a000-0000-7000-8000-000000000009', {}))).toMatchObject({
      code: 'return-not-found',
    })
  })

  test('of our own shelf goes to the supplier by way of quarantine', async () => {
    const back = await take({
      kind: 'for-supplier',
      from: 'SHOP',
      reference: undefined,
      reason: 'sent in error',
    })
    expect(back).toMatchObject({ from: 'SHOP', reference: null })
    expect(await onHand('P-100')).toEqual({ SHOP: 2, VAN1: 1, BAD: 1 })
  })

  test('in exchange for a new one comes from the job, and waits for the supplier', async () => {
    const back = await take({
      kind: 'exchange',
      part: 'H-1',
      from: 'job',
      reference: 'J-1',
      reason: 'old unit',
    })
    await decide(back.returnId, { way: 'to-supplier', reason: 'exchange value' })
    expect(await onHand('H-1')).toEqual({})
  })

  test('from a customer or a job says from which', async () => {
    const { reference: _, ...rest } = unused
    expect(await refusalOf(shop.ask('returns.take-return', rest))).toEqual({
      code: 'reference-needed',
      outside: 'customer',
    })
  })

  test('that was booked by mistake is no return once its movement is taken back', async () => {
    const { returnId } = await take()
    const { movements } = await shop.answer('stock-ledger.list-movements', { part: 'P-100' })
    const movementId = movements[0]?.movementId ?? ''
    await shop.answer('stock-ledger.reverse-movement', { movementId, reason: 'wrong part' })
    expect(await undecided()).toEqual([])
    expect(await refusalOf(decide(returnId, {}))).toEqual({ code: 'return-not-found', returnId })
  })

  test('whose decision is taken back in the ledger is undecided again', async () => {
    const { returnId } = await take()
    const decided = await decide(returnId, {})
    if (!decided.ok) throw new Error('it was to be decided')
    const movementId = decided.value.decisions[0]?.movementId ?? ''
    await shop.answer('stock-ledger.reverse-movement', { movementId, reason: 'still good' })
    expect((await undecided())[0]).toMatchObject({ returnId, undecided: 1, decisions: [] })
  })
})

describe('a wrong fit', () => {
  const wrongFit = { kind: 'wrong-fit' as const, reason: 'spigot too wide', model: 'QV-1042/A' }

  test('puts a caution on every later fits of that part in that model', async () => {
    const { fitRecordId } = await take(wrongFit)
    const answer = await shop.answer('fit-check.judge-fit', { model: 'QV-1042/A', part: 'P-100' })
    expect(answer.verdict).toBe('fits')
    expect(answer.cautions).toContainEqual(
      expect.objectContaining({ code: 'wrong-fit-returned', recordId: fitRecordId }),
    )
  })

  test('names the appliance by its full number, or nothing is booked at all', async () => {
    const before = await onHand('P-100')
    const { model: _, ...noModel } = wrongFit
    expect(await refusalOf(shop.ask('returns.take-return', { ...unused, ...noModel }))).toEqual({
      code: 'appliance-needed',
      part: 'P-100',
    })
    const halfRead = { ...unused, ...wrongFit, model: 'QV-1042/?' }
    expect(await refusalOf(shop.ask('returns.take-return', halfRead))).toMatchObject({
      code: 'model-not-settled',
    })
    expect(await onHand('P-100')).toEqual(before)
    expect(await undecided()).toEqual([])
  })
})

test('without a quarantine nothing is taken back, and it is said what to load', async () => {
  const bare = await openTestShop({
    ...orderShop,
    'locations.csv': 'location,kind,name\nSHOP,shop,\nVAN1,van,\n',
    'opening_stock.csv': 'location,part_number,quantity\nSHOP,P-100,1\n',
  })
  expect(await refusalOf(bare.ask('returns.take-return', unused))).toEqual({
    code: 'quarantine-needed',
    typed: null,
  })
  bare.close()
  expect(await refusalOf(shop.ask('returns.take-return', { ...unused, quarantine: 'VAN1' }))).toEqual({
    code: 'quarantine-needed',
    typed: 'VAN1',
  })
})
