import { expect, test } from 'vitest'
import {
  type PartPosition,
  type PositionFacts,
  reckonPositions,
} from '../../../electron/reorder/reckon-positions.ts'

const locations = [
  { locationId: 1, location: 'shop', kind: 'shop' },
  { locationId: 2, location: 'van-1', kind: 'van' },
  { locationId: 3, location: 'cage', kind: 'quarantine' },
]
const stock = (location: string, quantity: number, partId = 7) => ({ location, quantity, partId })

function check(facts: Partial<PositionFacts>, expected: Partial<PartPosition>) {
  const found = reckonPositions({
    ...{ stock: [], vanLevels: [], reserved: new Map(), onOrder: new Map(), locations },
    familyOf: () => 4,
    countsFor: partId => (partId === 6 ? 7 : partId),
    ...facts,
  })
  expect(found.get(7)).toMatchObject(expected)
}

test('what is on the shelf and on order counts, what is kept for others does not', () =>
  check(
    { stock: [stock('shop', 5)], onOrder: new Map([[7, 4]]), reserved: new Map([[7, 2]]) },
    { onShelf: 5, onOrder: 4, reserved: 2, position: 7 },
  ))

test('a van’s list is demand on the shop: what it lacks is owed, what it carries is not the shop’s', () => {
  const vanLevels = [{ locationId: 2, partId: 7, familyId: null, level: 3 }]
  check({ vanLevels, stock: [stock('shop', 5), stock('van-1', 1)] }, { vanShort: 2, position: 3 })
  check(
    { vanLevels, stock: [stock('shop', 5), stock('van-1', 3)] },
    { vanShort: 0, vanSpare: 0, position: 5 },
  )
  check({ vanLevels, stock: [stock('van-1', 5)] }, { vanSpare: 2, position: 2 })
})

test('where a van’s list names the family, none of its parts in the van is spare', () =>
  check(
    {
      vanLevels: [{ locationId: 2, partId: null, familyId: 4, level: 2 }],
      stock: [stock('van-1', 2), stock('shop', 1)],
    },
    { inVans: 2, vanSpare: 0, position: 1 },
  ))

test('what stands in quarantine is nobody’s to use', () =>
  check({ stock: [stock('cage', 9), stock('shop', 1)] }, { onShelf: 1, position: 1 }))

test('pieces of a replaced number count for the number that stands for it', () =>
  check(
    { stock: [stock('shop', 2, 6), stock('shop', 1)], onOrder: new Map([[6, 1]]) },
    { onShelf: 3, position: 4 },
  ))
