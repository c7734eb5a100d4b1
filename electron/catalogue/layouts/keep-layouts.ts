import type { CheckedInput, Output } from '../../../shared-schemas/index.ts'
import type { Layout, SavedLayout } from '../../../shared-schemas/supplier-layouts.ts'
import { inTransaction, type ReadableDatabase } from '../../database/handles.ts'
import { Refusal } from '../../requests/refusal.ts'
import type { Shop } from '../../requests/shop.ts'
import { listLayoutFaults } from './check-layout.ts'
import {
  deleteLayout,
  insertLayout,
  listLayouts,
  nameKeyOf,
  readLayout,
  updateLayoutName,
} from './layout-queries.ts'

type LayoutShop = Pick<Shop, 'database' | 'now'>

/** Keeps a sound layout; one of its name stays as it is unless it is to be replaced. */
export function saveLayout(
  { database, now }: LayoutShop,
  { layout, replace, initials = '' }: CheckedInput<'catalogue.save-layout'>,
): Output<'catalogue.save-layout'> {
  refuseFaultyLayout(layout)
  return inTransaction(database, writable => {
    const former = readLayout(writable, layout.name)
    if (former !== undefined && !replace) throw new Refusal({ code: 'layout-exists', name: former.name })
    deleteLayout(writable, layout.name)
    insertLayout(writable, layout, { at: now(), initials })
    return { layout: layoutNamed(writable, layout.name), replaced: former !== undefined }
  })
}

export function refuseFaultyLayout(layout: Layout): void {
  const faults = listLayoutFaults(layout)
  if (faults.length > 0) throw new Refusal({ code: 'layout-wrong', layout: layout.name, faults })
}

export function renameLayout(
  { database }: LayoutShop,
  { name, newName }: CheckedInput<'catalogue.rename-layout'>,
): Output<'catalogue.rename-layout'> {
  return inTransaction(database, writable => {
    const { name: former } = layoutNamed(writable, name)
    const other = readLayout(writable, newName)
    if (other !== undefined && nameKeyOf(newName) !== nameKeyOf(former))
      throw new Refusal({ code: 'layout-exists', name: other.name })
    updateLayoutName(writable, { name: former, newName })
    return { layout: layoutNamed(writable, newName) }
  })
}

export function removeLayout(
  { database }: LayoutShop,
  { name }: CheckedInput<'catalogue.remove-layout'>,
): Output<'catalogue.remove-layout'> {
  return inTransaction(database, writable => {
    const removed = layoutNamed(writable, name)
    deleteLayout(writable, name)
    return { removed }
  })
}

export function layoutNamed(database: ReadableDatabase, name: string): SavedLayout {
  const layout = readLayout(database, name)
  if (layout !== undefined) return layout
  const known = listLayouts(database).map(each => each.name)
  throw new Refusal({ code: 'layout-not-found', name, known })
}
