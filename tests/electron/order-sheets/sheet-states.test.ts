import { expect, test } from 'vitest'
import {
  decideStage,
  type SheetAct,
  type Stage,
  stateOf,
} from '../../../electron/order-sheets/sheet-states.ts'

const untouched = { number: '2026-0007', received: 0, toCome: 5 }

test.each<[string, { stage: Stage; received: number; toCome: number }, string]>([
  ['nothing came yet', { stage: 'sent', received: 0, toCome: 5 }, 'sent'],
  ['some came', { stage: 'sent', received: 2, toCome: 3 }, 'part-received'],
  ['all came', { stage: 'sent', received: 5, toCome: 0 }, 'received'],
  ['some came and the rest never will', { stage: 'sent', received: 2, toCome: 0 }, 'received'],
  ['nothing came and nothing will', { stage: 'sent', received: 0, toCome: 0 }, 'cancelled'],
  ['nobody has sent it', { stage: 'checked', received: 0, toCome: 5 }, 'checked'],
])('the state of a sheet of which %s', (_title, sheet, expected) => {
  expect(stateOf(sheet)).toBe(expected)
})

const acts: readonly SheetAct[] = ['change', 'check', 'reopen', 'send', 'receive', 'close', 'cancel']

test.each<[Stage, Partial<Record<SheetAct, Stage>>]>([
  ['draft', { change: 'draft', check: 'checked', cancel: 'cancelled' }],
  ['checked', { reopen: 'draft', send: 'sent', cancel: 'cancelled' }],
  ['sent', { receive: 'sent', close: 'sent', cancel: 'cancelled' }],
  ['cancelled', {}],
])('what may be done with a sheet that is %s, and nothing else', (stage, expected) => {
  const done = acts.flatMap(act => {
    const decided = decideStage({ ...untouched, stage }, act)
    return decided.ok ? [[act, decided.value]] : []
  })
  expect(Object.fromEntries(done)).toEqual(expected)
})

test('a sheet of which something came is not cancelled: its remainder is closed', () => {
  const decided = decideStage({ ...untouched, stage: 'sent', received: 1 }, 'cancel')
  expect(decided).toMatchObject({
    ok: false,
    problem: { code: 'sheet-state-forbids', state: 'part-received' },
  })
})
