import { afterEach, expect, test } from 'vitest'
import type { LeftOut, Proposal, ProposedLine } from '../../../../shared-schemas/proposal.ts'
import { openTestShop, type TestShop } from '../../../builders/open-test-shop.ts'
import { reorderShop } from '../../../builders/reorder-shop.ts'

let shop: TestShop
afterEach(() => shop.close())

async function propose(): Promise<Proposal> {
  return shop.answer('proposal.make-proposal', {})
}

function lineOf({ orders }: Proposal, partNumber: string): ProposedLine | undefined {
  return orders.flatMap(({ lines }) => lines).find(line => line.partNumber === partNumber)
}

function leftOutOf({ leftOut }: Proposal, partNumber: string): LeftOut | undefined {
  return leftOut.find(left => left.partNumber === partNumber)
}

test('what runs low is proposed up to its level, in packs, and what has enough is not', async () => {
  shop = await openTestShop(reorderShop)
  const proposal = await propose()
  const belt = lineOf(proposal, 'B-200')
  expect(belt?.need).toBe(belt?.level.orderUpTo)
  expect(belt?.quantity).toBeGreaterThanOrEqual(belt?.need ?? 0)
  const hose = lineOf(proposal, 'H-1')
  expect((hose?.quantity ?? 0) % 5).toBe(0)
  expect(lineOf(proposal, '00480121')).toBeUndefined()
  for (const { lines, goods, carriage, total, terms } of proposal.orders) {
    const sum = lines.reduce((all, { amount }) => all + Math.round(Number(amount) * 100), 0)
    expect(Math.round(Number(goods) * 100)).toBe(sum)
    expect(Math.round(Number(total) * 100)).toBe(sum + Math.round(Number(carriage) * 100))
    if (terms.carriagePaidFrom !== null && sum >= Number(terms.carriagePaidFrom) * 100)
      expect(Number(carriage)).toBe(0)
  }
  expect(proposal.proofs).toEqual([{ currency: 'GBP', kind: 'exact', gap: '0.00', gapShare: 0 }])
})

test('what stands in quarantine is nobody’s to use', async () => {
  shop = await openTestShop(reorderShop)
  expect(lineOf(await propose(), 'L-1')?.position).toMatchObject({ onShelf: 0, available: 0 })
})

test('what lies spare in a van is brought back before it is bought', async () => {
  shop = await openTestShop(reorderShop)
  const proposal = await propose()
  expect(proposal.moves).toContainEqual({
    ...{ partNumber: 'H-2', description: 'Drain hose long', from: 'VAN1' },
    quantity: expect.any(Number),
  })
  const bought = lineOf(proposal, 'H-2')
  if (bought !== undefined) expect(bought.need).toBe(bought.level.orderUpTo - 6)
})

test('what a van’s list lacks is demand on the shop', async () => {
  shop = await openTestShop(reorderShop)
  const before = lineOf(await propose(), 'B-200')?.need ?? 0
  await shop.load({ 'van_lists.csv': 'van,family,part_number,level\nVAN1,,B-200,3\n' })
  const line = lineOf(await propose(), 'B-200')
  expect(line?.need).toBe(before + 3)
  expect(line?.position.vanShort).toBe(3)
})

test('what a van lacks of a family is demand for the part of it that is used most', async () => {
  shop = await openTestShop(reorderShop)
  const before = lineOf(await propose(), 'B-100')?.need ?? 0
  await shop.load({ 'van_lists.csv': 'van,family,part_number,level\nVAN1,belt,,3\n' })
  expect(lineOf(await propose(), 'B-100')?.need).toBe(before + 3)
  for (const part of ['B-200', 'B-101'])
    await shop.answer('stock-ledger.record-movement', {
      ...{ part, quantity: 1, from: part === 'B-101' ? 'SHOP' : 'supplier', to: 'VAN1', reason: 'loaded' },
    })
  expect(lineOf(await propose(), 'B-100')?.need).toBe(before + 1)
})

test('what is reserved for a job is not there for others', async () => {
  shop = await openTestShop(reorderShop)
  await shop.answer('stock-ledger.record-movement', {
    ...{ part: 'B-200', quantity: 2, from: 'supplier', to: 'SHOP', reason: 'goods in' },
  })
  const before = lineOf(await propose(), 'B-200')?.need ?? 0
  await shop.answer('stock-ledger.reserve-part', {
    ...{ part: 'B-200', location: 'SHOP', quantity: 1, heldFor: 'job', reference: 'J1', initials: 'AB' },
  })
  expect(lineOf(await propose(), 'B-200')?.need).toBe(before + 1)
})

test('a pattern part takes the place of a genuine one only when the shop allows it', async () => {
  shop = await openTestShop(reorderShop)
  const without = lineOf(await propose(), 'B-100')
  expect(without?.instead).toEqual([])
  await shop.answer('proposal.change-settings', { usesPatternStock: true })
  const proposal = await propose()
  const line = lineOf(proposal, 'B-100')
  const used = line?.instead ?? []
  expect(used).toEqual([{ partNumber: 'B-101', kind: 'pattern', quantity: 4, isDead: false }])
  expect(line?.need).toBe((without?.need ?? 0) - 4)
})

test('what is promised by its number is bought, whatever lies there in its place', async () => {
  shop = await openTestShop(reorderShop)
  await shop.answer('proposal.change-settings', { usesPatternStock: true })
  const { job } = await shop.answer('jobs.open-job', { model: 'QV-1', symptom: 'drum stands still' })
  await shop.answer('jobs.need-part', { job, part: 'B-200', quantity: 3 })
  await shop.load({
    'parts.csv': `${reorderShop['parts.csv']}B-201,belt,Tessory,pattern,"Belt 1330, pattern",,length=1330\n`,
    'opening_stock.csv': 'location,part_number,quantity,bin\nSHOP,B-201,50,\n',
  })
  const line = lineOf(await propose(), 'B-200')
  expect(line).toMatchObject({ need: 3, position: { available: -3 } })
  expect(line?.instead).toMatchObject([{ partNumber: 'B-201', quantity: line?.level.orderUpTo }])
})

test('a safety device is never covered by another part', async () => {
  shop = await openTestShop({
    ...reorderShop,
    'attributes.csv': 'family,attribute,unit,rule,tolerance\nbelt,length,mm,equal,\nlock,volts,V,equal,\n',
    'parts.csv': `${reorderShop['parts.csv']}L-2,lock,Quorvane,genuine,Door lock too,,volts=230\n`.replace(
      'Door lock,,',
      'Door lock,,volts=230',
    ),
    'opening_stock.csv': `${reorderShop['opening_stock.csv']}SHOP,L-2,20,\n`,
  })
  const line = lineOf(await propose(), 'L-1')
  expect(line?.instead).toEqual([])
  expect(line?.need).toBe(line?.level.orderUpTo)
})

test('a part that nobody offers is left out and says so', async () => {
  shop = await openTestShop(reorderShop)
  expect(leftOutOf(await propose(), 'N-1')).toMatchObject({
    why: 'no-offer',
    text: expect.stringContaining('no supplier on record offers it'),
  })
})

test('what is on sheets that are not sent, and then on order, is not proposed again', async () => {
  shop = await openTestShop(reorderShop)
  const first = await propose()
  const { sheets } = await shop.answer('order-sheets.draft-sheets', {
    sheets: first.orders.map(({ supplier, lines }) => ({
      supplier,
      lines: lines.map(({ partNumber: part, quantity }) => ({ part, quantity })),
    })),
  })
  const drafted = await propose()
  expect(drafted.orders).toEqual([])
  expect(leftOutOf(drafted, 'B-200')).toMatchObject({
    why: 'on-order',
    text: expect.stringMatching(/not sent/),
  })
  for (const { number } of sheets) {
    await shop.answer('order-sheets.check-sheet', { number })
    await shop.answer('order-sheets.send-sheet', { number })
  }
  const sent = await propose()
  expect(sent.orders).toEqual([])
  expect(leftOutOf(sent, 'B-200')?.text).toMatch(/^What would be ordered is coming: \d+ on order\.$/)
})

test('the budget is kept to, and what waits says that it is the budget', async () => {
  shop = await openTestShop(reorderShop)
  await shop.answer('proposal.change-settings', { budget: '40.00' })
  const proposal = await propose()
  const spent = proposal.orders.reduce((sum, { total }) => sum + Number(total), 0)
  expect(spent).toBeGreaterThan(0)
  expect(spent).toBeLessThanOrEqual(40)
  expect(proposal.leftOut.filter(({ why }) => why === 'budget').length).toBeGreaterThan(0)
})

test('a part goes to the supplier that the shop prefers for it', async () => {
  shop = await openTestShop(reorderShop)
  const supplierOf = ({ orders }: Proposal) =>
    orders.find(({ lines }) => lines.some(({ partNumber }) => partNumber === 'B-100'))?.supplier
  for (const supplier of ['DALE', 'HOLM']) {
    await shop.answer('proposal.prefer-supplier', { part: 'B-100', supplier })
    expect(supplierOf(await propose())).toBe(supplier)
  }
})

test('a supplier or a part that is not on record is refused by name', async () => {
  shop = await openTestShop(reorderShop)
  const wrongSupplier = await shop.ask('proposal.weigh-order', { supplier: 'NOBODY', lines: [] })
  expect(wrongSupplier).toMatchObject({ ok: false, problem: { code: 'supplier-not-found', typed: 'NOBODY' } })
  const wrongPart = await shop.ask('proposal.prefer-supplier', { part: 'ZZ-9', supplier: null })
  expect(wrongPart).toMatchObject({ ok: false, problem: { code: 'part-not-found', typed: 'ZZ-9' } })
})

test('one more pack says what it changes, carriage counted', async () => {
  shop = await openTestShop(reorderShop)
  const weighed = await shop.answer('proposal.weigh-order', {
    supplier: 'DALE',
    lines: [{ part: 'B-200', quantity: 11 }],
  })
  expect(weighed).toMatchObject({
    ...{ goods: '99.00', carriage: '6.00', total: '105.00', toCarriagePaid: '1.00', toMinimum: null },
    lines: [{ amount: '99.00', oneMore: { quantity: 12, change: '3.00' } }],
  })
})

test('a line is explained by its history, its levels and where its stock will go', async () => {
  shop = await openTestShop(reorderShop)
  const explained = await shop.answer('proposal.explain-part', { part: 'B-200', quantity: 5 })
  expect(explained.history.slice(-3).map(({ pieces }) => pieces)).toEqual([1, 1, 1])
  const [first, ...rest] = explained.projected
  expect(first?.without).toBeCloseTo(-explained.meanPerBucket, 1)
  for (const { without, with: bought } of rest) expect(bought - without).toBeCloseTo(5, 5)
})

test('a part that a job waits for is ordered though none is kept, until it is kept for the job', async () => {
  shop = await openTestShop({
    ...reorderShop,
    'parts.csv': `${reorderShop['parts.csv']}J-1,lock,Quorvane,genuine,Lock for one job,,\n`,
    'offers.csv': `${reorderShop['offers.csv']}DALE,J-1,D-J1,30.00,1,1,1\n`,
  })
  expect(lineOf(await propose(), 'J-1')).toBeUndefined()
  const { job } = await shop.answer('jobs.open-job', { model: 'QV-1', symptom: 'door stays shut' })
  await shop.answer('jobs.need-part', { job, part: 'J-1', quantity: 2 })
  expect(lineOf(await propose(), 'J-1')).toMatchObject({ need: 2, position: { available: -2 } })
  await shop.answer('stock-ledger.record-movement', {
    ...{ part: 'J-1', quantity: 2, from: 'supplier', to: 'SHOP', reason: 'goods in' },
  })
  expect(lineOf(await propose(), 'J-1')).toBeUndefined()
  await shop.answer('stock-ledger.reserve-part', {
    ...{ part: 'J-1', location: 'SHOP', quantity: 1, heldFor: 'job', reference: job, initials: 'AB' },
  })
  expect(lineOf(await propose(), 'J-1')).toBeUndefined()
  await shop.answer('jobs.take-part', { job, part: 'J-1', quantity: 1, from: 'SHOP', takeReserved: true })
  // One is taken and one still waits on the shelf; what was taken is demand now, so that some are kept.
  expect(lineOf(await propose(), 'J-1')?.position).toMatchObject({ onShelf: 1, reserved: 1, available: 0 })
})
