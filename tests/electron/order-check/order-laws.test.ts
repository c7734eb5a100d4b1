import fc from 'fast-check'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { OrderLine } from '../../../shared-schemas/order-check.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { orderShop } from '../../builders/order-shop.ts'

let shop: TestShop
beforeAll(async () => {
  shop = await openTestShop(orderShop)
})
afterAll(() => shop.close())

const oneOf = (...values: readonly string[]) => fc.constantFrom(...values)
const maybe = <Value>(of: fc.Arbitrary<Value>) => fc.option(of, { nil: undefined })
const numbers = orderShop['parts.csv']?.toString().split('\n').slice(1, -1) ?? []
const parts = numbers.map(row => row.split(',')[0] ?? '')

/** Lines as shops write them: parts that exist or nearly do, half of a plate, dates and quantities of every kind. */
const line = fc.record(
  {
    line: fc.integer({ min: 1, max: 9999 }),
    partNumber: fc.oneof(
      oneOf(...parts),
      oneOf('p100', 'XR-100', 'P-10', '', '--', '=1+1'),
      fc.string({ maxLength: 12 }),
    ),
    quantity: maybe(
      fc.oneof(
        oneOf('1', '2', '5', '7', '0', '-1', '1.5', '1,000', 'x'),
        fc.integer(),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
      ),
    ),
    brand: maybe(oneOf('Quorvane', 'Tollbrae', 'Nowhere', '')),
    modelNumber: maybe(
      oneOf('QV-1042/A', 'QV-1042/B', 'QV-1042', 'QV-1042/?', 'TB 77310', 'TB 7731O', 'ZZ 99999', 'Q', ''),
    ),
    made: maybe(oneOf('2012', '2015-06', '2017-03', '2031', '03/2016', '')),
    serial: maybe(oneOf('77', '14201', '')),
  },
  { requiredKeys: ['line', 'partNumber'] },
)

/** A line as the contract takes it: what is not written is absent. */
function asGiven(written: Record<string, unknown>): OrderLine {
  return Object.fromEntries(
    Object.entries(written).filter(([, value]) => value !== undefined),
  ) as unknown as OrderLine
}

const orders = fc.array(line, { minLength: 1, maxLength: 8 }).map(lines => lines.map(asGiven))

test('a line says of fit what the counter would say, and whatever is no proved yes is stopped', async () => {
  let yes = 0
  await fc.assert(
    fc.asyncProperty(orders, async lines => {
      const checked = await shop.answer('order-check.check-order', { lines })
      for (const [at, { verdict, flags }] of checked.lines.entries()) {
        const { partNumber = '', modelNumber, brand, made, serial } = lines[at] ?? {}
        if (!modelNumber?.trim()) {
          expect(verdict).toBeNull()
          continue
        }
        const atCounter = await shop.ask('fit-check.judge-fit', {
          model: modelNumber,
          part: partNumber.trim() || '-',
          ...(brand ? { brand } : {}),
          ...(made ? { made } : {}),
          ...(serial ? { serial } : {}),
        })
        const isYes = verdict === 'fits' || verdict === 'fits-with-changes'
        if (isYes) yes += 1
        if (atCounter.ok) expect(verdict).toBe(atCounter.value.verdict)
        else expect(isYes).toBe(false)
        if (!isYes) expect(flags.some(({ severity }) => severity === 'stop')).toBe(true)
      }
    }),
    { numRuns: 400 },
  )
  // Questions of which none is a yes would prove little.
  expect(yes).toBeGreaterThan(30)
}, 60_000)

test('the order of the lines changes no verdict and no number of findings', async () => {
  await fc.assert(
    fc.asyncProperty(orders, async lines => {
      const numbered = lines.map((written, at) => ({ ...written, line: at + 1 }))
      const [forward, backward] = await Promise.all(
        [numbered, numbered.toReversed()].map(some =>
          shop.answer('order-check.check-order', { lines: some }),
        ),
      )
      const summary = (checked: typeof forward) =>
        checked?.lines
          .map(({ line: at, verdict, flags }) => [at, verdict, flags.map(({ code }) => code).join()] as const)
          .sort(([one], [other]) => one - other)
      expect(summary(backward)).toEqual(summary(forward))
      expect(backward).toMatchObject({
        stops: forward?.stops,
        cautions: forward?.cautions,
        notes: forward?.notes,
      })
    }),
    { numRuns: 200 },
  )
}, 60_000)
