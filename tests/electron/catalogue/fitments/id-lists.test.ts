import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decodeIds, encodeIds } from '../../../../electron/catalogue/fitments/id-lists.ts'

/**
 * DWARF Debugging Information Format, version 4 (June 2010), section 7.6, figure 22: examples of unsigned LEB128; from
 * memory. The last one is the example with which the encoding is mostly explained.
 */
const examples: readonly (readonly [number: number, bytes: readonly number[]])[] = [
  [2, [0x02]],
  [127, [0x7f]],
  [128, [0x80, 0x01]],
  [129, [0x81, 0x01]],
  [130, [0x82, 0x01]],
  [12857, [0xb9, 0x64]],
  [624485, [0xe5, 0x8e, 0x26]],
]

describe('one id is one number as DWARF writes it', () => {
  const check = (number: number, bytes: readonly number[]) => {
    expect([...encodeIds([number])]).toEqual(bytes)
    expect(decodeIds(Uint8Array.from(bytes))).toEqual([number])
  }
  test.each(examples)('%i', check)
})

test('ids are the gaps between them, from where the list starts', () => {
  expect([...encodeIds([1000, 1001, 1130], 1000)]).toEqual([0, 1, 0x81, 0x01])
  expect(decodeIds(Uint8Array.of(0, 1, 0x81, 0x01), 1000)).toEqual([1000, 1001, 1130])
})

test('what is encoded decodes to the same', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.nat(0xfffffff)), ids => {
      const ascending = ids.sort((one, other) => one - other)
      expect(decodeIds(encodeIds(ascending))).toEqual(ascending)
    }),
  )
})
