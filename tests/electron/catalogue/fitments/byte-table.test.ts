import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ByteTable } from '../../../../electron/catalogue/fitments/byte-table.ts'

/** Few hashes for many keys, so that keys are told apart by their bytes alone; enough keys to grow several times. */
test('finds each key under its own value and no other', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.string({ unit: 'grapheme', maxLength: 6 }), { minLength: 1, maxLength: 60 }),
      fc.integer({ min: 1, max: 4 }),
      (keys, hashes) => {
        const table = new ByteTable()
        const known = new Map<string, number>()
        for (const [value, key] of keys.entries()) {
          const bytes = Buffer.from(`«${key}»`)
          const [start, end] = [2, bytes.length - 2]
          const middle = start + ((end - start) >> 1)
          const hash = value % hashes
          expect(table.find(bytes, hash, start, middle, middle, end)).toBe(-1)
          table.add(bytes, hash, [start, middle, middle, end], value)
          known.set(key, value)
          for (const [other, expected] of known) {
            const all = Buffer.from(other)
            expect(table.find(all, expected % hashes, 0, all.length, 0, 0)).toBe(expected)
          }
        }
      },
    ),
    { numRuns: 50 },
  )
})

test('holds many thousands', () => {
  const table = new ByteTable()
  const keyOf = (value: number) => Buffer.from(`Ostrel,OW ${value}`)
  for (let value = 0; value < 50_000; value += 1) {
    const key = keyOf(value)
    table.add(key, value * 0x9e3779b1, [0, key.length, 0, 0], value)
  }
  for (let value = 0; value < 50_000; value += 777) {
    const key = keyOf(value)
    const hash = (value * 0x9e3779b1) | 0
    expect(table.find(key, hash, 0, key.length, 0, 0)).toBe(value)
    expect(table.find(key, hash, 0, key.length - 1, 0, 0)).toBe(-1)
  }
})
