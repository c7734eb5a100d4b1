import { afterEach, beforeEach, expect, test } from 'vitest'
import type { GivenInput } from '../../../shared-schemas/index.ts'
import { wordProblem } from '../../../shared-schemas/problem-wording.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { orderShop } from '../../builders/order-shop.ts'

type Given = GivenInput<'order-check.override-stop'>
type Line = Given['line']

let shop: TestShop
let today: Date
beforeEach(async () => {
  today = new Date('2026-11-23T09:00:00Z')
  shop = await openTestShop(orderShop, { now: () => today })
})
afterEach(() => shop.close())

const excluded: Line = { line: 2, partNumber: 'P-101', quantity: 1, modelNumber: 'QV-1042/B' }
const asked = (changed: Partial<Given> = {}): Given => ({
  line: excluded,
  code: 'does-not-fit',
  reason: 'maker confirms it by telephone',
  initials: 'ab',
  ...changed,
})

/** The flags of one line by `severity code`, the hazards left out. */
async function flagsOf(line: Line, supplier?: string) {
  const { lines, stops } = await shop.answer('order-check.check-order', {
    lines: [line],
    ...(supplier === undefined ? {} : { supplier }),
  })
  const flags = (lines[0]?.flags ?? []).filter(
    ({ code }) => !['mains', 'water', 'some-in-stock'].includes(code),
  )
  return { flags, stops, verdict: lines[0]?.verdict }
}

test('a stop that was let pass is a note that says who, when and why, and the verdict stays', async () => {
  const made = await shop.answer('order-check.override-stop', asked())
  expect(made).toEqual({
    overrideId: expect.stringMatching(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-/),
    recordedAt: '2026-11-23T09:00:00.000Z',
  })
  const { flags, stops, verdict } = await flagsOf(excluded)
  expect(stops).toBe(0)
  expect(verdict).toBe('does-not-fit')
  expect(flags).toEqual([
    {
      code: 'does-not-fit',
      severity: 'note',
      text: expect.stringMatching(
        /^Does not fit .* Let pass by AB on 2026-11-23: maker confirms it by telephone\.$/,
      ),
      override: {
        reason: 'maker confirms it by telephone',
        initials: 'AB',
        recordedAt: '2026-11-23T09:00:00.000Z',
      },
    },
  ])
})

test.each<[string, Partial<Line>]>([
  ['written otherwise', { partNumber: 'p 101', modelNumber: 'qv 1042 b', brand: 'Quorvane' }],
  ['in another quantity', { quantity: 2, line: 40 }],
])('the same part and model %s', async (_title, changed) => {
  await shop.answer('order-check.override-stop', asked())
  expect((await flagsOf({ ...excluded, ...changed })).stops).toBe(0)
})

test.each<[string, Partial<Line>]>([
  ['made at another time', { made: '2018-03' }],
  ['with a serial of its own', { serial: '77' }],
  ['of another model', { modelNumber: 'TB 77310' }],
])('an appliance %s stops anew', async (_title, changed) => {
  await shop.answer('order-check.override-stop', asked())
  expect((await flagsOf({ ...excluded, ...changed })).stops).toBe(1)
})

test('the newest override of a stop is the one that shows', async () => {
  await shop.answer('order-check.override-stop', asked())
  today = new Date('2026-11-24T09:00:00Z')
  await shop.answer('order-check.override-stop', asked({ reason: 'tried on the bench', initials: 'CD' }))
  const { flags } = await flagsOf(excluded)
  expect(flags[0]?.override).toMatchObject({ initials: 'CD', reason: 'tried on the bench' })
})

test('a part that the catalogue does not have can be let pass', async () => {
  const unknown: Line = { line: 2, partNumber: 'Z-900', quantity: 1 }
  await shop.answer('order-check.override-stop', asked({ line: unknown, code: 'part-unknown' }))
  expect((await flagsOf({ ...unknown, partNumber: 'z900' })).stops).toBe(0)
})

test('what one supplier cannot deliver stops for another', async () => {
  const line: Line = { line: 2, partNumber: 'H-1', quantity: 4 }
  const code = 'not-offered-by-supplier'
  await shop.answer('order-check.override-stop', asked({ line, code, supplier: 'holm' }))
  expect((await flagsOf(line, 'HOLM')).stops).toBe(0)
  await shop.load({ 'suppliers.csv': 'supplier,name,currency\nTARN,Tarn Parts,GBP\n' })
  expect((await flagsOf(line, 'TARN')).stops).toBe(1)
})

test.each<[string, Partial<Given>, RegExp]>([
  ['without a reason', { reason: ' ok ' }, /reason: a reason says why in words/],
  ['without initials', { initials: '' }, /initials are one to six letters/],
  ['with a name in figures', { initials: '12' }, /initials are one to six letters/],
  ['that does not stand', { code: 'no-record' }, /has no stop called no-record/],
  [
    'that is a caution',
    {
      line: { line: 2, partNumber: 'P-101', quantity: 2, modelNumber: 'QV-1042/A' },
      code: 'above-appliance',
    },
    /has no stop called above-appliance/,
  ],
  [
    'of what cannot be read',
    { line: { ...excluded, quantity: '1.5' }, code: 'quantity-unreadable' },
    /cannot be let pass, it must be mended\. The quantity “1\.5”/,
  ],
])('a stop %s is not let pass, and nothing is recorded', async (_title, changed, says) => {
  const reply = await shop.ask('order-check.override-stop', asked(changed))
  expect(reply.ok ? 'recorded' : wordProblem(reply.problem)).toMatch(says)
  expect((await flagsOf(excluded)).stops).toBe(1)
})
