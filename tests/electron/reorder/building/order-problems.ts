import fc from 'fast-check'
import type {
  LineOffer,
  OrderProblem,
  PriceRow,
  SupplierTerms,
  WantedLine,
} from '../../../../electron/reorder/building/order-problem.ts'

/** Small order problems of every shape: few suppliers and lines, prices that nearly tie, thresholds that nearly bind. */
export const smallProblem: fc.Arbitrary<OrderProblem> = fc.integer({ min: 1, max: 3 }).chain(count => {
  const names = Array.from({ length: count }, (_, at) => `S${at + 1}`)
  return fc.record({
    suppliers: fc.tuple(...names.map(terms)),
    lines: fc
      .array(wantedLine(names), { minLength: 1, maxLength: 4 })
      .map(lines => lines.map((line, at) => ({ ...line, lineId: `L${at + 1}` }))),
    budget: fc.option(cents(0, 6000), { nil: null, freq: 2 }),
  })
})

function cents(min: number, max: number): fc.Arbitrary<string> {
  return fc.integer({ min, max }).map(amount => (amount / 100).toFixed(2))
}

function terms(supplier: string): fc.Arbitrary<SupplierTerms> {
  return fc.record({
    supplier: fc.constant(supplier),
    carriage: fc.option(cents(0, 900)),
    carriagePaidFrom: fc.option(cents(500, 3000)),
    minimumOrder: fc.option(cents(100, 2000)),
  })
}

function wantedLine(names: readonly string[]): fc.Arbitrary<WantedLine> {
  return fc
    .record({ need: fc.integer({ min: 1, max: 4 }), more: fc.integer({ min: 0, max: 3 }) })
    .chain(({ need, more }) =>
      fc.record({
        lineId: fc.constant(''),
        need: fc.constant(need),
        most: fc.constant(need + more),
        worth: cents(0, 3000),
        extraWorth: cents(0, 80),
        offers: fc
          .subarray([...names], { minLength: 1 })
          .chain(chosen => fc.tuple(...chosen.map(name => offer(name)))),
      }),
    )
}

function offer(supplier: string): fc.Arbitrary<LineOffer> {
  const row = (from: number): fc.Arbitrary<PriceRow> =>
    fc.record({
      from: fc.constant(from),
      price: cents(80, 900),
      pack: fc.constantFrom(1, 1, 2, 3),
      minimum: fc.constantFrom(1, 1, 2),
    })
  return fc.record({
    offerId: fc.constant(`offer of ${supplier}`),
    supplier: fc.constant(supplier),
    rows: fc.oneof(
      row(1).map(only => [only]),
      fc.tuple(row(1), row(3)).map(([first, second]) => [first, second]),
    ),
  })
}
