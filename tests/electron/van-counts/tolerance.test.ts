import { Big } from 'big.js'
import { describe, expect, test } from 'vitest'
import { classifyByValue, isWithinTolerance, recordAccuracy } from '../../../electron/van-counts/tolerance.ts'

describe('value classes', () => {
  test('are those of a textbook table under the rule as written down', () => {
    // Heizer, Render and Munson, Operations Management, Pearson 2020, chapter 12, practice problem 1: yearly use of nine
    // items; up to 80 % of it with the item A, up to 95 % B, else C.
    const yearly = {
      J24: 12500,
      R26: 9000,
      L02: 3200,
      M12: 1550,
      P33: 620,
      T72: 65,
      S67: 53,
      Q47: 32,
      V20: 30,
    }
    const names = Object.keys(yearly)
    const classes = classifyByValue(
      Object.values(yearly).map((value, partId) => ({ partId, yearlyValue: new Big(value) })),
    )
    const of = (wanted: string) => names.filter((_, partId) => classes.get(partId) === wanted)
    expect([of('A'), of('B'), of('C')]).toEqual([
      ['J24', 'R26'],
      ['L02'],
      ['M12', 'P33', 'T72', 'S67', 'Q47', 'V20'],
    ])
  })

  test('are all C where nothing was used', () => {
    expect([...classifyByValue([{ partId: 1, yearlyValue: new Big(0) }]).values()]).toEqual(['C'])
  })
})

describe('record accuracy', () => {
  test('nets nothing: five too few and five too many are two wrong lines', () => {
    // Common figures of inventory record accuracy: tolerances of A 1 %, B 3 %, C 5 %, and no netting of lines.
    const lines = [95, 105].map(counted => ({ isWithin: isWithinTolerance({ book: 100, counted }, 'A') }))
    expect(recordAccuracy(lines)).toBe(0)
  })

  test('takes what is just within the tolerance of its class, and nothing beyond', () => {
    const within = (counted: number) =>
      (['A', 'B', 'C'] as const).filter(one => isWithinTolerance({ book: 100, counted }, one)).join('')
    expect([100, 101, 102, 103, 104, 105, 106].map(within)).toEqual(['ABC', 'ABC', 'BC', 'BC', 'C', 'C', ''])
    expect(isWithinTolerance({ book: 0, counted: 1 }, 'C')).toBe(false)
  })

  test('is not known without lines', () => {
    expect(recordAccuracy([])).toBeNull()
  })
})
