import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type KeptPart, shareOutStock } from '../../../../electron/reorder/levels/share-out-stock.ts'
import { shortageByStock } from '../../../../electron/reorder/levels/shortage-curve.ts'

const anyPart = fc
  .record({
    mean: fc.double({ min: 0.02, max: 2, noNaN: true }),
    ratio: fc.double({ min: 1.05, max: 4, noNaN: true }),
    leadTime: fc.constantFrom(0, 1, 2),
  })
  .map(({ mean, ratio, leadTime }): KeptPart => {
    const { short } = shortageByStock(
      { mean: mean * leadTime, ratio },
      { mean: mean * (leadTime + 1), ratio },
    )
    return { mean, short, least: 0, most: Number.POSITIVE_INFINITY, cost: 1 }
  })
const anyTarget = fc.constantFrom(0.8, 0.9, 0.95, 0.98)

const pieces = (entries: readonly number[]) => entries.reduce((sum, entry) => sum + entry, 0)
const shortOf = (parts: readonly KeptPart[], entries: readonly number[]) =>
  parts.reduce((sum, { short }, at) => sum + (short[Math.min(entries[at] ?? 0, short.length - 1)] ?? 0), 0)

test('all parts together give the share that was asked for', () =>
  fc.assert(
    fc.property(fc.array(anyPart, { minLength: 1, maxLength: 12 }), anyTarget, (parts, target) => {
      const asked = parts.reduce((sum, { mean }) => sum + mean, 0)
      expect(shortOf(parts, shareOutStock(parts, target))).toBeLessThanOrEqual((1 - target) * asked + 1e-9)
    }),
  ))

test('no other sharing out of fewer pieces leaves less short, as trying every one of them shows', () =>
  fc.assert(
    fc.property(fc.array(anyPart, { minLength: 1, maxLength: 3 }), anyTarget, (parts, target) => {
      const entries = shareOutStock(parts, target)
      const [most, short] = [pieces(entries), shortOf(parts, entries)]
      fc.pre(most <= 25)
      for (const other of everySharing(parts.length, most))
        if (pieces(other) < most) expect(shortOf(parts, other)).toBeGreaterThanOrEqual(short - 1e-9)
    }),
    { numRuns: 60 },
  ))

test('a shelf that is full gets no more, and what must be kept is kept', () => {
  const { short } = shortageByStock({ mean: 1, ratio: 2 }, { mean: 2, ratio: 2 })
  const part = { mean: 1, short, cost: 1, least: 0, most: Number.POSITIVE_INFINITY }
  const [limited = 0, free = 0] = shareOutStock([{ ...part, most: 2 }, part], 0.95)
  expect(limited).toBe(2)
  expect(free).toBeGreaterThan(2)
  expect(shareOutStock([{ ...part, least: 4 }], 0.01)).toEqual([4])
})

test('a shop without parts has nothing to share out', () => expect(shareOutStock([], 0.95)).toEqual([]))

function* everySharing(parts: number, most: number): Generator<number[]> {
  if (parts === 0) {
    yield []
    return
  }
  for (let first = 0; first <= most; first++)
    for (const rest of everySharing(parts - 1, most - first)) yield [first, ...rest]
}
