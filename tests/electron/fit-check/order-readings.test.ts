import { describe, expect, test } from 'vitest'
import { isSoonerRead, readSoonest } from '../../../electron/fit-check/order-readings.ts'
import type { ReadingTable } from '../../../electron/fit-check/tabulate-readings.ts'
import { aReadingTable, drawKinds, kindsOf, type OpenKind } from '../../builders/open-kinds.ts'
import { readingsOneByOne, undecidedOneByOne } from './count-one-by-one.ts'

const seeds = Array.from({ length: 40 }, (_, at) => at + 1)
const everyReading = ({ choices }: ReadingTable) => choices.map((_, at) => at)
const choicesAt = ({ choices }: ReadingTable, order: readonly number[]) =>
  order.flatMap(at => choices[at] ?? [])

describe('no order takes fewer readings, by trying every one, whichever way round the set is given', () => {
  test.each(seeds)('kinds of seed %i', seed => {
    const kinds = drawKinds(seed)
    const table = aReadingTable(kinds)
    const orders = ordersToRead(table)
    const soonest = readSoonest(table, everyReading(table).reverse(), Number.POSITIVE_INFINITY)
    expect(orders).toContainEqual(soonest.order)
    const count = (order: readonly number[]) => readingsOneByOne(kinds, choicesAt(table, order))
    expect(soonest.readings).toBeCloseTo(Math.min(...orders.map(count)), 9)
    expect(soonest.readings).toBeCloseTo(count(soonest.order), 9)
  })
})

describe('where every order would take too long, what leaves fewest undecided goes next, the easiest of equals', () => {
  test.each(seeds)('kinds of seed %i', seed => {
    const kinds = drawKinds(seed)
    const table = aReadingTable(kinds)
    const { order, readings } = readSoonest(table, everyReading(table), 0)
    expect(order).toEqual(orderStepByStep(kinds, table))
    expect(readings).toBeCloseTo(readingsOneByOne(kinds, choicesAt(table, order)), 9)
  })
})

test('every order is tried up to just so many comparisons', () => {
  const ways = ['000', '000', '110', '110', '011', '010', '101', '100'].map(
    ([volts = '', hertz = '', watts = '']) => ({
      shows: { volts, hertz, watts },
      sold: volts === hertz ? 1 : 2,
    }),
  )
  const table = aReadingTable(ways.map(way => ({ models: [['A', 'Velmara']], ways: [way] })))
  // Watts settle two of the eight at once, but volts and hertz together settle all.
  expect(readSoonest(table, [0, 1, 2], 2 ** 3 * 8)).toEqual({ order: [0, 1, 2], readings: 16 })
  expect(readSoonest(table, [0, 1, 2], 2 ** 3 * 8 - 1)).toEqual({ order: [2, 0, 1], readings: 20 })
})

test('no reading is made of what is decided, and a needless one is not counted', () => {
  const table = aReadingTable(kindsOf({ A: [{ shows: {}, sold: 1 }], B: [{ shows: {}, sold: 1 }] }))
  expect(readSoonest(table, [], 100)).toEqual({ order: [], readings: 0 })
  expect(readSoonest(table, [0], 100)).toEqual({ order: [0], readings: 0 })
})

test('orders that differ by less than what is lost in rounding are as soon', () => {
  const taking = (readings: number) => ({ order: [], readings })
  expect(isSoonerRead(taking(2), taking(2 + 1e-9))).toBe(false)
  expect(isSoonerRead(taking(2), taking(2.001))).toBe(true)
  expect(isSoonerRead(taking(2.001), taking(2))).toBe(false)
})

/** Every order that reads plate positions in one go from left to right. */
function ordersToRead(table: ReadingTable): number[][] {
  const isPosition = (at: number) => table.choices[at]?.position !== null
  const positions = everyReading(table).filter(isPosition)
  const others = everyReading(table).filter(at => !isPosition(at))
  const steps = positions.length > 0 ? [positions, ...others.map(at => [at])] : others.map(at => [at])
  return arrange(steps).map(arranged => arranged.flat())
}

function arrange<Item>(items: readonly Item[]): Item[][] {
  if (items.length === 0) return [[]]
  return items.flatMap((item, at) => arrange(items.toSpliced(at, 1)).map(rest => [item, ...rest]))
}

function orderStepByStep(kinds: readonly OpenKind[], table: ReadingTable): number[] {
  let left = ordersToRead(table)
  for (const step of everyReading(table).keys()) {
    const undecided = (order: readonly number[]) =>
      Math.round(1e6 * undecidedOneByOne(kinds, choicesAt(table, order.slice(0, step + 1))))
    const fewest = Math.min(...left.map(undecided))
    const next = Math.min(...left.filter(order => undecided(order) === fewest).map(order => order[step] ?? 0))
    left = left.filter(order => order[step] === next)
  }
  return left[0] ?? []
}
