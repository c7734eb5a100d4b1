import { expect, test } from 'vitest'
import {
  readReckoning,
  type TypedReckoning,
  writeReckoning,
} from '../../../renderer/reorder/read-reckoning.ts'

const typed: TypedReckoning = { reviewDays: '7', leadDays: '0', lineCost: '1.50', holdingRate: '7' }

test('what is reckoned with is read as typed, and written back the same', () => {
  const read = readReckoning(typed)
  expect(read).toEqual({
    ok: true,
    settings: { reviewDays: 7, leadDays: 0, lineCost: '1.50', holdingRate: 0.07 },
  })
  if (read.ok) expect(writeReckoning(read.settings)).toEqual(typed)
})

test('an empty line cost is none', () => {
  expect(readReckoning({ ...typed, lineCost: ' ' })).toMatchObject({ settings: { lineCost: null } })
})

test('a percentage may have a comma and its sign', () => {
  expect(readReckoning({ ...typed, holdingRate: '12,5 %' })).toMatchObject({
    settings: { holdingRate: 0.125 },
  })
})

test.each<[Partial<TypedReckoning>, RegExp]>([
  [{ reviewDays: '0' }, /from 1 to 366/],
  [{ reviewDays: '2.5' }, /from 1 to 366/],
  [{ reviewDays: '' }, /from 1 to 366/],
  [{ leadDays: '731' }, /from 0 to 730/],
  [{ leadDays: '-1' }, /from 0 to 730/],
  [{ lineCost: '£2' }, /as 1\.50/],
  [{ holdingRate: '0' }, /above 0/],
  [{ holdingRate: '501' }, /above 0/],
])('%o is told with what to write', (changed, fault) => {
  expect(readReckoning({ ...typed, ...changed })).toEqual({ ok: false, fault: expect.stringMatching(fault) })
})
