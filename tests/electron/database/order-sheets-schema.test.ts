import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../../electron/database/migrate.ts'
import { orderSheets } from '../../../electron/database/migrations/0012-order-sheets.ts'
import { migrations } from '../../../electron/database/migrations/all-migrations.ts'

/** A shop of the layout before, with a movement in its book; then brought to this one. */
let shop: Database.Database
beforeEach(() => {
  shop = new Database(':memory:')
  shop.pragma('foreign_keys = ON')
  migrate(shop, migrations.slice(0, migrations.indexOf(orderSheets)))
  shop.exec(`
    INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0);
    INSERT INTO part VALUES (1, '1E5', '1E5', 1, 'Ostrel', 'genuine', '', NULL);
    INSERT INTO location VALUES (1, 'SHOP', 'shop', 'Shop');
    INSERT INTO supplier VALUES (1, 'DALE', 'Dale Spares', 'GBP', NULL, NULL, NULL, 2);
    INSERT INTO movement (movement_id, kind, part_id, quantity, to_location_id, outside, recorded_at, device, initials, reason)
      VALUES ('${idOf(1)}', 'receipt', 1, 4, 1, 'supplier', '${when}', 'counter', 'AB', 'delivery');`)
  migrate(shop, migrations.slice(0, migrations.indexOf(orderSheets) + 1))
  shop.exec(`
    INSERT INTO order_sheet VALUES (1, '2026-0001', 2026, 1, 1, 'GBP', '0', 0, 'draft');
    INSERT INTO order_sheet_line (order_sheet_id, line, part_id, quantity, pack, unit_price) VALUES (1, 1, 1, 5, 1, '9.00');`)
})
afterEach(() => shop.close())

const when = '2026-11-23T09:00:00.000Z'

function idOf(serial: number): string {
  return `0190a000-0000-7000-8000-${String(serial).padStart(12, '0')}`
}

const stage = (to: string) => shop.exec(`UPDATE order_sheet SET stage = '${to}'`)

test('what the book of the layout before held is there, and a receipt may name it', () => {
  stage('checked')
  stage('sent')
  shop.exec(`
    INSERT INTO goods_receipt VALUES ('${idOf(2)}', 1, 'DN 4711', '${when}', 'counter', 'AB');
    INSERT INTO goods_receipt_line VALUES ('${idOf(1)}', '${idOf(2)}', 1, 1, 'good');`)
  expect(
    shop.prepare('SELECT quantity FROM goods_receipt_line JOIN movement USING (movement_id)').all(),
  ).toEqual([{ quantity: 4 }])
  expect(shop.pragma('foreign_key_check')).toEqual([])
  expect(() => shop.exec(`UPDATE goods_receipt_line SET condition = 'damaged'`)).toThrow(/never edited/)
  expect(() => shop.exec('DELETE FROM goods_receipt_line')).toThrow(/never deleted/)
})

test('an order sheet is never deleted, and keeps its number, supplier and currency', () => {
  expect(() => shop.exec('DELETE FROM order_sheet')).toThrow(/never deleted/)
  expect(() => shop.exec(`UPDATE order_sheet SET number = '2026-0002'`)).toThrow(/stay/)
  expect(() => shop.exec(`UPDATE order_sheet SET currency = 'EUR'`)).toThrow(/stay/)
  expect(() =>
    shop.exec(`INSERT INTO order_sheet VALUES (2, '2026-0001', 2026, 2, 1, 'GBP', '0', 0, 'draft')`),
  ).toThrow(/UNIQUE/)
})

test('a sheet goes from draft to checked to sent, and not another way', () => {
  expect(() => stage('sent')).toThrow(/does not go/)
  stage('checked')
  stage('draft')
  stage('checked')
  stage('sent')
  expect(() => stage('draft')).toThrow(/does not go/)
  stage('cancelled')
  expect(() => stage('sent')).toThrow(/does not go/)
})

test('once it is checked, its lines, its overrides and its carriage stay', () => {
  stage('checked')
  expect(() => shop.exec('UPDATE order_sheet_line SET quantity = 9')).toThrow(/only a draft changes/)
  expect(() => shop.exec('DELETE FROM order_sheet_line')).toThrow(/only a draft changes/)
  expect(() =>
    shop.exec(
      `INSERT INTO order_sheet_line (order_sheet_id, line, part_id, quantity, pack, unit_price) VALUES (1, 2, 1, 5, 1, '9')`,
    ),
  ).toThrow(/only a draft changes/)
  expect(() =>
    shop.exec(`INSERT INTO order_sheet_override VALUES (1, 1, 'superseded', 'wanted so', 'AB', '${when}')`),
  ).toThrow(/only a draft changes/)
  expect(() => shop.exec(`UPDATE order_sheet SET carriage = '1'`)).toThrow(/only a draft changes/)
})

test('the files of a sheet are kept when it is sent, and never changed', () => {
  const keep = () => shop.exec(`INSERT INTO order_sheet_file VALUES (1, 'order.csv', x'31')`)
  expect(keep).toThrow(/when a checked sheet is sent/)
  stage('checked')
  keep()
  stage('sent')
  expect(() => shop.exec(`UPDATE order_sheet_file SET bytes = x'32'`)).toThrow(/never edited/)
  expect(() => shop.exec('DELETE FROM order_sheet_file')).toThrow(/never deleted/)
})
