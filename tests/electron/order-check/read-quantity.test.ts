import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readQuantity } from '../../../electron/order-check/read-quantity.ts'

/** The pieces, or why there are none. */
function check(written: string | number | undefined, expected: number | RegExp | 'assumed'): void {
  const read = readQuantity(written)
  if (expected === 'assumed') expect(read).toEqual({ kind: 'assumed', pieces: 1 })
  else if (typeof expected === 'number') expect(read).toEqual({ kind: 'stated', pieces: expected })
  else {
    expect(read.kind).toBe('unreadable')
    expect(read.kind === 'unreadable' && read.why).toMatch(expected)
  }
}

test.each<[string | number | undefined, number | RegExp | 'assumed']>([
  [undefined, 'assumed'],
  ['  ', 'assumed'],
  ['3', 3],
  [3, 3],
  ['007', 7],
  ['2.0', 2],
  ['2,00', 2],
  ['0', /orders nothing/],
  ['0.0', /not a whole number/],
  ['1.5', /not a whole number/],
  [0.5, /not a whole number/],
  ['-2', /below nought/],
  ['−2', /below nought/],
  ['1,000', /read in two ways/],
  ['1.000', /read in two ways/],
  ['two', /not a whole number/],
  ['1e3', /not a whole number/],
  ['2 pcs', /not a whole number/],
  ['1000001', /more than 1,000,000/],
  [Number.NaN, /not a whole number/],
  [Number.POSITIVE_INFINITY, /not a whole number/],
])('%j', (written, expected) => check(written, expected))

test('whatever is written, what is read is a whole number above nought or none', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.double(), fc.integer()), written => {
      const read = readQuantity(written)
      if (read.kind === 'unreadable') return read.why !== ''
      return Number.isSafeInteger(read.pieces) && read.pieces > 0
    }),
  )
})
