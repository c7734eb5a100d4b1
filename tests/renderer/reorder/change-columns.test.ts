import { expect, test } from 'vitest'
import {
  addColumn,
  changeColumn,
  type LaidColumn,
  layColumns,
  moveUp,
  removeColumn,
} from '../../../renderer/reorder/change-columns.ts'

const laid = layColumns([
  { heading: 'Code', holds: 'supplier-code' },
  { heading: 'Qty', holds: 'quantity' },
  { heading: 'Ref', holds: 'order-number' },
])
const headings = (columns: readonly LaidColumn[]) => columns.map(({ heading }) => heading)

test('a column goes up by one place, and the first stays', () => {
  expect(headings(moveUp(laid, 2))).toEqual(['Code', 'Ref', 'Qty'])
  expect(headings(moveUp(laid, 0))).toEqual(['Code', 'Qty', 'Ref'])
})

test('a new column stands last, holds nothing, and is no other, whichever were left out', () => {
  const added = addColumn(removeColumn(laid, 0))
  expect(headings(added)).toEqual(['Qty', 'Ref', ''])
  expect(new Set(added.map(({ id }) => id)).size).toBe(3)
  expect(added.at(-1)?.holds).toBe('nothing')
  expect(addColumn([])).toEqual([{ id: 0, heading: '', holds: 'nothing' }])
})

test('one column is changed and the others are as they were', () => {
  const changed = changeColumn(laid, { id: 1, heading: 'Menge', holds: 'quantity' })
  expect(headings(changed)).toEqual(['Code', 'Menge', 'Ref'])
  expect(headings(laid)).toEqual(['Code', 'Qty', 'Ref'])
})
