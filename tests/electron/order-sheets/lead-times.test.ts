import { v7 as newId } from 'uuid'
import { expect, test } from 'vitest'
import { openDatabase } from '../../../electron/database/open-database.ts'
import { readLeadTimes } from '../../../electron/order-sheets/goods-in/delivery-queries.ts'

/** One supplier, one sheet of two lines that was sent on the 23rd; what came of it is written below. */
function openShop() {
  const database = openDatabase(':memory:')
  database.connection.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO location VALUES (1, 'SHOP', 'shop', 'Shop');
    INSERT INTO supplier VALUES (7, 'DALE', 'Dale Spares', 'GBP', NULL, NULL, NULL, 2);
    INSERT INTO order_sheet VALUES (1, '2026-0001', 2026, 1, 7, 'GBP', '0', 0, 'draft');
    INSERT INTO order_sheet_line (order_sheet_id, line, part_id, quantity, pack, unit_price)
      VALUES (1, 1, 1, 5, 1, '9'), (1, 2, 1, 5, 1, '9');
    UPDATE order_sheet SET stage = 'checked';
    UPDATE order_sheet SET stage = 'sent';
    INSERT INTO order_sheet_event (order_sheet_id, what, reason, recorded_at, device, initials)
      VALUES (1, 'sent', '', '2026-11-23T16:30:00.000Z', 'counter', 'AB');`)
  const movement = (day: string, reverses: string | null = null) => {
    const id = newId()
    const [from, to] = reverses === null ? [null, 1] : [1, null]
    database.run(
      `INSERT INTO movement (movement_id, kind, part_id, quantity, from_location_id, to_location_id, outside, recorded_at,
         device, initials, reason, reverses) VALUES (?, ?, 1, 1, ?, ?, 'supplier', ?, 'counter', 'AB', '', ?)`,
      id,
      reverses === null ? 'receipt' : 'return',
      from,
      to,
      day,
      reverses,
    )
    return id
  }
  return {
    database,
    movement,
    receive(day: string, lines: readonly (readonly [line: number, condition: 'good' | 'damaged'])[]) {
      const receipt = newId()
      database.run(`INSERT INTO goods_receipt VALUES (?, 1, '', ?, 'counter', 'AB')`, receipt, day)
      return lines.map(([line, condition]) => {
        const id = movement(day)
        database.run('INSERT INTO goods_receipt_line VALUES (?, ?, 1, ?, ?)', id, receipt, line, condition)
        return id
      })
    },
  }
}

test('each line of each delivery took the days from sending, by the calendar', () => {
  const { database, receive } = openShop()
  receive('2026-11-25T08:00:00.000Z', [
    [1, 'good'],
    [1, 'good'],
    [2, 'good'],
  ])
  receive('2026-12-01T18:00:00.000Z', [[1, 'good']])
  expect(readLeadTimes(database, '2026-12-31')).toEqual(new Map([[7, [2, 2, 8]]]))
  expect(readLeadTimes(database, '2026-11-30')).toEqual(new Map([[7, [2, 2]]]))
  expect(readLeadTimes(database, '2026-11-24')).toEqual(new Map())
})

test('what came damaged, and what was taken back, took no time', () => {
  const { database, movement, receive } = openShop()
  const [, back] = receive('2026-11-25T08:00:00.000Z', [
    [1, 'damaged'],
    [2, 'good'],
  ])
  movement('2026-11-25T09:00:00.000Z', back)
  expect(readLeadTimes(database, '2026-12-31')).toEqual(new Map())
})
