import { describe, expect, test } from 'vitest'
import {
  countBits,
  countUndecided,
  isDecided,
  nothingRead,
  type ReadingTable,
  readMore,
} from '../../../electron/fit-check/tabulate-readings.ts'
import { aReadingTable, drawKinds, kindsOf } from '../../builders/open-kinds.ts'
import { bitsOneByOne, undecidedOneByOne } from './count-one-by-one.ts'

const named = ({ choices }: ReadingTable) =>
  choices.map(({ reading, position }) => (position === null ? reading : `${reading} ${position}`))

test('the plate number is the easiest to read, then brand, figures of the plate, date and serial, then what is measured', () => {
  const names = 'width serial made bore thread watts frequency hertz voltage volts'.split(' ')
  const showing = (value: string) => Object.fromEntries(names.map(name => [name, value]))
  const table = aReadingTable([
    { models: [['A1X', 'Velmara']], ways: [{ shows: showing('one'), sold: 1 }] },
    { models: [['A2XY', 'Ostrel']], ways: [{ shows: showing('other'), sold: 2 }] },
  ])
  const plate = ['model-number 2', 'model-number 4', 'brand']
  const measured = ['bore', 'thread', 'width']
  expect(named(table)).toEqual([
    ...plate,
    ...['volts', 'voltage', 'hertz', 'frequency', 'watts', 'made', 'serial'],
    ...measured,
  ])
})

test('what shows the same everywhere is not a reading to ask for', () => {
  const table = aReadingTable(kindsOf({ A: [{ shows: { volts: '230' }, sold: 1 }] }))
  expect(named(table)).toEqual([])
})

test('a reading that some would not show tells them from those that would', () => {
  const table = aReadingTable(
    kindsOf({
      A: [
        { shows: { bore: '8' }, sold: 1 },
        { shows: {}, sold: 2 },
      ],
    }),
  )
  expect(named(table)).toEqual(['bore'])
  expect(isDecided(table, readMore(table, nothingRead(table), [0]))).toBe(true)
})

test('a model of whose two ways one is decided counts as half undecided', () => {
  const kinds = kindsOf({
    A: [
      { shows: { made: 'early' }, sold: 1 },
      { shows: { made: 'late' }, sold: 1 },
    ],
    B: [{ shows: { made: 'late' }, sold: 2 }],
  })
  const table = aReadingTable(kinds)
  expect(countUndecided(table, nothingRead(table))).toBe(2)
  const made = readMore(table, nothingRead(table), [named(table).indexOf('made')])
  expect(countUndecided(table, made)).toBe(1.5)
  expect(isDecided(table, made)).toBe(false)
})

test('one model in four that differs leaves 0.8113 bits a model, and none once it is told apart', () => {
  const same = [{ shows: {}, sold: 1 }]
  const table = aReadingTable(kindsOf({ A: same, B: same, C: same, D: [{ shows: {}, sold: 2 }] }))
  // The entropy of a chance of one in four: -(1/4) log2 (1/4) - (3/4) log2 (3/4), Shannon 1948, section 6, from memory.
  expect(countBits(table, nothingRead(table))).toBeCloseTo(4 * 0.811278, 5)
  expect(countBits(table, readMore(table, nothingRead(table), [0]))).toBe(0)
})

test('to read what the table has no column of is a mistake of the program', () => {
  const table = aReadingTable(drawKinds(1))
  expect(() => readMore(table, nothingRead(table), [99])).toThrow('names columns of its table, but 99')
})

describe('what is decided, undecided and uncertain is as counted one appliance after the other', () => {
  test.each(Array.from({ length: 40 }, (_, at) => at + 1))('kinds of seed %i', seed => {
    const kinds = drawKinds(seed)
    const table = aReadingTable(kinds)
    const sets = Array.from({ length: 2 ** table.choices.length }, (_, bits) =>
      table.choices.map((_choice, at) => at).filter(at => bits & (1 << at)),
    )
    const counted = sets.map(set => {
      const cells = readMore(table, nothingRead(table), set)
      return [countUndecided(table, cells), countBits(table, cells), isDecided(table, cells)] as const
    })
    const expected = sets.map(set => {
      const read = set.flatMap(at => table.choices[at] ?? [])
      return [undecidedOneByOne(kinds, read), bitsOneByOne(kinds, read)] as const
    })
    for (const [at, [undecided, bits]] of expected.entries()) {
      expect(counted[at]?.[0]).toBeCloseTo(undecided, 9)
      expect(counted[at]?.[1]).toBeCloseTo(bits, 9)
      expect(counted[at]?.[2]).toBe(undecided === 0)
    }
  })
})
