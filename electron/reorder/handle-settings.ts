import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { inTransaction } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { partNumbered } from '../stock-ledger/named-things.ts'
import { countPiecesFor, readReorderSettings } from './plan-queries.ts'
import { appendOneOffMark, replaceReorderSettings, replaceShelfLimit } from './setting-writing-queries.ts'

type SettingShop = Pick<Shop, 'database' | 'now' | 'newId' | 'device'>

export function changeSettings(
  { database }: SettingShop,
  changes: CheckedInput<'reorder.change-settings'>,
): Output<'reorder.change-settings'> {
  return inTransaction(database, writable => {
    const before = readReorderSettings(writable)
    const settings = {
      fillRate: changes.fillRate ?? before.fillRate,
      reviewDays: changes.reviewDays ?? before.reviewDays,
      leadDays: changes.leadDays ?? before.leadDays,
      // Here null is a value: a line has no cost of its own.
      lineCost: changes.lineCost === undefined ? before.lineCost : changes.lineCost,
      holdingRate: changes.holdingRate ?? before.holdingRate,
    }
    replaceReorderSettings(writable, settings)
    return settings
  })
}

export function setShelfLimit(
  { database }: SettingShop,
  { part, pieces }: CheckedInput<'reorder.set-shelf-limit'>,
): Output<'reorder.set-shelf-limit'> {
  return inTransaction(database, writable => {
    const { partId, partNumber } = partNumbered(writable, part)
    replaceShelfLimit(writable, partId, pieces)
    return { partNumber, pieces }
  })
}

/** A reference under which nothing was used is a slip of the pen. */
export function markOneOff(
  shop: SettingShop,
  { reference, isOneOff, initials = '' }: CheckedInput<'reorder.mark-one-off'>,
): Output<'reorder.mark-one-off'> {
  return inTransaction(shop.database, writable => {
    const pieces = countPiecesFor(writable, reference)
    if (pieces === undefined) throw new Refusal({ code: 'nothing-used-for', reference })
    appendOneOffMark(writable, shop, { reference, isOneOff, initials })
    return { reference, isOneOff, pieces }
  })
}
