import type { ReorderSettings } from '../../shared-schemas/reorder-settings.ts'
import type { WritableDatabase } from '../database/handles.ts'
import type { Shop } from '../requests/shop.ts'

export function replaceReorderSettings(database: WritableDatabase, settings: ReorderSettings): void {
  const { fillRate, reviewDays, leadDays, lineCost, holdingRate } = settings
  database.run(
    'UPDATE reorder_setting SET fill_rate = ?, review_days = ?, lead_days = ?, line_cost = ?, holding_rate = ?',
    ...[fillRate, reviewDays, leadDays, lineCost, holdingRate],
  )
}

export function replaceShelfLimit(database: WritableDatabase, partId: number, pieces: number | null): void {
  if (pieces === null) database.run('DELETE FROM shelf_limit WHERE part_id = ?', partId)
  else
    database.run(
      'INSERT INTO shelf_limit VALUES (?, ?) ON CONFLICT DO UPDATE SET pieces = excluded.pieces',
      partId,
      pieces,
    )
}

export function appendOneOffMark(
  database: WritableDatabase,
  { newId, now, device }: Pick<Shop, 'newId' | 'now' | 'device'>,
  mark: { readonly reference: string; readonly isOneOff: boolean; readonly initials: string },
): void {
  database.run(
    `INSERT INTO one_off_mark (mark_id, reference, is_one_off, recorded_at, device, initials)
     VALUES (?, ?, ?, ?, ?, ?)`,
    ...[newId(), mark.reference, mark.isOneOff ? 1 : 0, now().toISOString(), device, mark.initials],
  )
}
